/** The bounds of a space's envelopes, as recordings speak of them, and how wide they would have to be. */
import type { Located } from '../../model/located.ts';
import { roundDownToStep, roundUpToStep } from '../../physics/mathematics/sensible-steps.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { BoundedQuantity, RecordingSummary } from './summary.ts';

export function titleOfBounded(quantity: BoundedQuantity): string {
  return quantity === 'speed' ? 'air speed' : quantityInfo(quantity).title;
}

export function dimensionOfBounded(quantity: BoundedQuantity): Dimension {
  return quantity === 'speed' ? 'speed' : quantityInfo(quantity).dimension;
}

/** The range that bounds a quantity in a phase, where it is written. */
export function boundOf(
  space: SpaceEvaluation,
  phase: string | undefined,
  quantity: BoundedQuantity,
): Located<QuantityRange> | undefined {
  const envelope = space.phases.find((candidate) => candidate.envelope.phase === phase)?.envelope;
  if (quantity === 'air-temperature') return envelope?.temperature;
  return quantity === 'speed' ? envelope?.speed : envelope?.humidity;
}

/** A range of the site file, and the one that the recording supports. */
export interface WidenedBound {
  readonly quantity: BoundedQuantity;
  readonly written: Located<QuantityRange>;
  readonly low: number;
  readonly high: number;
}

/** Steps in which a person writes an envelope, canonical. */
const STEPS: Readonly<Record<BoundedQuantity, number>> = {
  'air-temperature': 1,
  'relative-humidity': 0.01,
  'dew-point': 1,
  'dew-point-depression': 1,
  'mixing-ratio': 1e-3,
  speed: 0.1,
};

/** The bounds that were passed, each as wide as all but a thousandth of the recording's time needs it, in round numbers. */
export function widenedBounds(space: SpaceEvaluation, { outside }: RecordingSummary): readonly WidenedBound[] {
  const widened = new Map<Located<QuantityRange>, WidenedBound>();
  for (const { phase, excesses } of outside.envelopes) {
    for (const { quantity, side, covering } of excesses) {
      const written = boundOf(space, phase, quantity);
      if (written === undefined) continue;
      const { low, high } = widened.get(written) ?? written.value;
      const step = STEPS[quantity];
      const wider =
        side === 'above'
          ? { low, high: Math.max(high, roundUpToStep(covering, step)) }
          : { low: Math.min(low, roundDownToStep(covering, step)), high };
      const most = quantity === 'relative-humidity' ? 1 : Number.POSITIVE_INFINITY;
      if (wider.low < written.value.low || wider.high > written.value.high)
        widened.set(written, { quantity, written, low: wider.low, high: Math.min(most, wider.high) });
    }
  }
  return [...widened.values()];
}
