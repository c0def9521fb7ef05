/** Where the air of a space may be slowest. */
import type { PhaseEnvelope } from '../../evaluate/air/envelope.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import type { Located } from '../../model/located.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { Related } from '../rule.ts';

export interface SlowestPhase {
  readonly envelope: PhaseEnvelope;
  readonly speed: Located<QuantityRange>;
}

/** The phase with the least air speed; undefined where no phase gives one. */
export function slowestPhase(space: SpaceEvaluation | undefined): SlowestPhase | undefined {
  const phases = (space?.phases ?? []).flatMap(({ envelope }) =>
    envelope.speed === undefined ? [] : [{ envelope, speed: envelope.speed }],
  );
  return phases.toSorted((one, other) => one.speed.value.low - other.speed.value.low)[0];
}

/** `0.1 m/s, phase drying` */
export function slowestWords({ envelope, speed }: SlowestPhase): string {
  const phase = envelope.phase === undefined ? '' : `, phase ${envelope.phase}`;
  return `${showQuantity(speed.value.low, 'speed')}${phase}`;
}

export function slowestIs(slowest: SlowestPhase): Related {
  return { message: `The air may be as slow as ${slowestWords(slowest)}.`, origin: slowest.speed.origin };
}
