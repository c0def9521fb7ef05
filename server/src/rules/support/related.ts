/** Places that findings of several rules point at. */

import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import { type KnownFact, showCorner } from '../../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Related } from '../rule.ts';

/** Where the heater is switched on. */
export function heaterIsOn({ heater }: PointEvaluation): readonly Related[] {
  const mode = heater.located?.value.mode;
  if (!heater.on || mode === undefined) return [];
  const rise =
    heater.rise === undefined
      ? ''
      : `, ${showQuantity(heater.rise.value.value, 'temperature-difference')} above the air`;
  return [{ message: `The heater is ${heater.mode} here${rise}.`, origin: mode.origin }];
}

/** Where the point has its air-temperature probe. */
export function airTemperatureProbeIs({ point }: PointEvaluation): readonly Related[] {
  const probe = point.airTemperatureProbe;
  if (probe === undefined) return [];
  return [{ message: 'The air-temperature probe is here.', origin: probe.keyOrigin ?? probe.origin }];
}

/** The phase or envelope at which a fact was found worst. */
export function worstPhase(space: SpaceEvaluation | undefined, fact: KnownFact): readonly Related[] {
  const { at } = fact;
  const phase = space?.phases.find(({ envelope }) => envelope.phase === at?.phase);
  if (phase === undefined || at === undefined) return [];
  return [{ message: `The worst corner: ${showCorner(at)}.`, origin: phase.envelope.keyOrigin }];
}
