/** Lays the rows of a recording against the envelopes of a space: how long and how far outside, by bound. */
import type {
  Bound,
  BoundedQuantity,
  EnvelopeOutside,
  Excess,
  RecordingEnvelope,
  RecordingOutside,
} from '../../evaluate/recorded/summary.ts';
import { BIN_WIDTHS } from './bin-widths.ts';
import { type Histogram, histogram } from './histogram.ts';
import { type ExtremeFinder, extremeFinder, momentOf } from './moments.ts';
import type { RecordedState } from './recorded-state.ts';

export interface OutsideCount {
  add(state: RecordedState, speed: number | undefined, time: number, seconds: number): void;
  /** @param seconds of the recording with a value */
  finish(seconds: number, shownTime: (time: number) => string): RecordingOutside;
}

/** Share of the recording's time that a bound may leave out and still cover it. */
const LEFT_OUT = 0.001;
/** Shares of a bound's width: values that were computed to and fro are not outside for their last digit. */
const ROUNDING = 1e-9;

/**
 * A row outside all envelopes counts for the one whose temperatures it has or is nearest to, and of several such for
 * the one whose other bounds it passes least: phases differ by their temperatures first.
 */
export function countOutside(envelopes: readonly RecordingEnvelope[]): OutsideCount {
  const counts = envelopes.map(({ phase, bounds }) => ({
    phase,
    temperature: bounds.filter(({ quantity }) => quantity === 'air-temperature'),
    others: bounds.filter(({ quantity }) => quantity !== 'air-temperature'),
    ends: bounds.flatMap(endsOf),
    insideSeconds: 0,
  }));
  let outsideSeconds = 0;
  return {
    add(state, speed, time, seconds) {
      let nearest = counts[0];
      let isInside = false;
      let leastKelvin = Number.POSITIVE_INFINITY;
      let leastOther = Number.POSITIVE_INFINITY;
      for (const count of counts) {
        const kelvin = distanceFrom(count.temperature, state, speed);
        const other = distanceFrom(count.others, state, speed);
        if (kelvin === 0 && other === 0) {
          count.insideSeconds += seconds;
          isInside = true;
        }
        if (kelvin < leastKelvin || (kelvin === leastKelvin && other < leastOther)) {
          leastKelvin = kelvin;
          leastOther = other;
          nearest = count;
        }
      }
      if (isInside || nearest === undefined) return;
      outsideSeconds += seconds;
      for (const end of nearest.ends) {
        const value = valueIn(state, speed, end.quantity);
        if (value === undefined || (end.side === 'above' ? value <= end.limit : value >= end.limit)) continue;
        end.seconds += seconds;
        end.distribution.add(value, seconds);
        end.farthest.offer(value, time, state);
      }
    },
    finish: (seconds, shownTime) => ({
      seconds: outsideSeconds,
      share: seconds > 0 ? outsideSeconds / seconds : 0,
      envelopes: counts.map(({ phase, insideSeconds, ends }): EnvelopeOutside => {
        const excesses = ends.flatMap((end) => excessOf(end, seconds * LEFT_OUT, shownTime));
        return { ...(phase === undefined ? {} : { phase }), insideSeconds, excesses };
      }),
    }),
  };
}

/** One end of a bound, and what was beyond it. */
interface BoundEnd {
  readonly quantity: BoundedQuantity;
  readonly side: 'below' | 'above';
  readonly limit: number;
  readonly distribution: Histogram;
  readonly farthest: ExtremeFinder;
  seconds: number;
}

function endsOf({ quantity, low, high }: Bound): BoundEnd[] {
  const end = { quantity, seconds: 0 };
  const distribution = (): Histogram => histogram(BIN_WIDTHS[quantity]);
  return [
    { ...end, side: 'below', limit: low, distribution: distribution(), farthest: extremeFinder('lowest') },
    { ...end, side: 'above', limit: high, distribution: distribution(), farthest: extremeFinder('highest') },
  ];
}

function valueIn(state: RecordedState, speed: number | undefined, quantity: BoundedQuantity): number | undefined {
  return quantity === 'speed' ? speed : state.values[quantity];
}

/** How far outside the bounds the state lies, in widths of the bound that is passed furthest; 0 inside. */
function distanceFrom(bounds: readonly Bound[], state: RecordedState, speed: number | undefined): number {
  let furthest = 0;
  for (const { quantity, low, high } of bounds) {
    const value = valueIn(state, speed, quantity);
    if (value === undefined || (value >= low && value <= high)) continue;
    const beyond = Math.max(low - value, value - high) / Math.max(high - low, BIN_WIDTHS[quantity]);
    if (beyond > ROUNDING) furthest = Math.max(furthest, beyond);
  }
  return furthest;
}

function excessOf(
  { quantity, side, limit, seconds, farthest, distribution }: BoundEnd,
  leaving: number,
  shownTime: (time: number) => string,
): readonly Excess[] {
  const extreme = farthest.found();
  if (extreme === undefined || seconds === 0) return [];
  const edge = distribution.edgeLeaving(leaving, side);
  const nearer = side === 'above' ? Math.min : Math.max;
  return [
    {
      quantity,
      side,
      limit,
      seconds,
      farthest: extreme.value,
      at: momentOf(extreme, shownTime),
      covering: edge === undefined ? limit : nearer(edge, extreme.value),
    },
  ];
}
