/**
 * The worst corner of an envelope: searched over the whole box, never assumed to be a corner of it. The box is sampled
 * once per envelope, the corners that the cut at saturation gives it and the end of ice included; each search takes the best sample and
 * climbs from there while a small step still helps.
 */
import { TRIPLE_POINT_CELSIUS } from '../physics/constants.ts';
import type { AirState } from '../physics/moist-air.ts';
import { cutTemperatures, type PhaseEnvelope, type Span, stateAt } from './envelope.ts';

/** A place in the box: air temperature in °C, share of the possible humidity range, pressure in Pa. */
type Place = readonly [number, number, number];

interface Sample {
  readonly place: Place;
  readonly state: AirState;
}

export interface SampledEnvelope {
  readonly envelope: PhaseEnvelope;
  readonly samples: readonly Sample[];
}

export interface Extreme {
  readonly value: number;
  readonly state: AirState;
}

/** Even steps along each range; between two samples a search climbs. */
const STEPS = 4;
/** The last step of a climb, as a share of the range: where a quantity ends or has a kink, 80 K give 1e-6 K. */
const FINEST_STEP = 1e-8;
const SHARES: Span = { low: 0, high: 1 };

export function sampleEnvelope(envelope: PhaseEnvelope): SampledEnvelope {
  const samples: Sample[] = [];
  const { temperature, humidity, pressure } = envelope;
  const shares = humidity.value.low === humidity.value.high ? [0] : evenly(SHARES, STEPS);
  const { low, high } = temperature.value;
  const endOfIce = low < TRIPLE_POINT_CELSIUS && TRIPLE_POINT_CELSIUS < high ? [TRIPLE_POINT_CELSIUS] : [];
  for (const pascal of evenly(pressure, STEPS)) {
    for (const celsius of [...evenly(temperature.value, STEPS), ...endOfIce, ...cutTemperatures(envelope, pascal)]) {
      for (const share of shares) {
        const place: Place = [celsius, share, pascal];
        samples.push({ place, state: stateAt(envelope, ...place) });
      }
    }
  }
  return { envelope, samples };
}

function evenly({ low, high }: Span, steps: number): readonly number[] {
  if (low === high) return [low];
  const between = Array.from({ length: steps - 1 }, (_, step) => low + ((high - low) * (step + 1)) / steps);
  return [low, ...between, high];
}

/**
 * The highest or lowest value of a function over the envelope, and the state where it has it. The function may lack a
 * value in part of the envelope, and have kinks; between two samples it is taken to have one extreme.
 *
 * @returns undefined where the function has no value at any sample
 */
export function extremeOf(
  { envelope, samples }: SampledEnvelope,
  direction: 'highest' | 'lowest',
  valueAt: (state: AirState) => number | undefined,
): Extreme | undefined {
  const sign = direction === 'highest' ? 1 : -1;
  let best: (Extreme & Sample) | undefined;
  const offer = (sample: Sample): boolean => {
    const value = valueAt(sample.state);
    if (value === undefined || !Number.isFinite(value)) return false;
    if (best !== undefined && sign * value <= sign * best.value) return false;
    best = { place: sample.place, state: sample.state, value };
    return true;
  };
  for (const sample of samples) offer(sample);
  const axes: readonly Span[] = [envelope.temperature.value, SHARES, envelope.pressure];
  const stepsHelp = (size: number): boolean => {
    const from = best?.place;
    return (
      from !== undefined &&
      neighbours(from, axes, size).some((place) => offer({ place, state: stateAt(envelope, ...place) }))
    );
  };
  if (!stepsHelp(FINEST_STEP)) return best;
  for (let size = 1 / (2 * STEPS); size > FINEST_STEP; size /= 2) {
    let climbing = true;
    while (climbing) climbing = stepsHelp(size);
  }
  return best;
}

/** The places one step along each axis, both ways, that lie in the box. */
function neighbours(place: Place, axes: readonly Span[], size: number): readonly Place[] {
  return axes.flatMap(({ low, high }, axis) => {
    const from = place[axis] ?? low;
    const step = size * (high - low);
    return [from + step, from - step].flatMap((to): Place[] => {
      const bounded = Math.min(high, Math.max(low, to));
      if (bounded === from) return [];
      const [celsius, share, pressure] = place;
      return [[axis === 0 ? bounded : celsius, axis === 1 ? bounded : share, axis === 2 ? bounded : pressure]];
    });
  });
}
