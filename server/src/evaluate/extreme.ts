/**
 * The worst corner of an envelope: found over the whole box, never assumed to be a corner. The box is sampled once
 * per envelope; each search takes the best sample and, where that is no corner of the box, climbs from there.
 */
import type { AirState } from '../physics/moist-air.ts';
import { type PhaseEnvelope, type Span, stateAt } from './envelope.ts';

/** A place in the box: shares from 0 to 1 along temperature, humidity and pressure. */
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

const STEPS = 8;
const FINEST_STEP = 1e-7;

export function sampleEnvelope(envelope: PhaseEnvelope): SampledEnvelope {
  const samples: Sample[] = [];
  const shares = (span: Span, steps: number): readonly number[] =>
    span.low === span.high ? [0] : Array.from({ length: steps + 1 }, (_, step) => step / steps);
  for (const pressureShare of shares(envelope.pressure, 2)) {
    for (const temperatureShare of shares(envelope.temperature.value, STEPS)) {
      for (const humidityShare of shares(envelope.humidity.value, STEPS)) {
        const place: Place = [temperatureShare, humidityShare, pressureShare];
        samples.push({ place, state: stateOf(envelope, place) });
      }
    }
  }
  return { envelope, samples };
}

/**
 * The highest or lowest value of a function over the envelope, and the state where it has it.
 * @returns undefined where the function has no value anywhere
 */
export function extremeOf(
  { envelope, samples }: SampledEnvelope,
  direction: 'highest' | 'lowest',
  valueAt: (state: AirState) => number | undefined,
): Extreme | undefined {
  const sign = direction === 'highest' ? 1 : -1;
  let best: (Extreme & { readonly place: Place }) | undefined;
  const offer = (place: Place, state: AirState): boolean => {
    const value = valueAt(state);
    if (value === undefined || !Number.isFinite(value)) return false;
    if (best !== undefined && sign * value <= sign * best.value) return false;
    best = { value, state, place };
    return true;
  };
  for (const { place, state } of samples) offer(place, state);
  if (best === undefined || best.place.every((share) => share === 0 || share === 1)) return best;
  const widths = [envelope.temperature.value, envelope.humidity.value, envelope.pressure];
  for (let step = 1 / (2 * STEPS); step > FINEST_STEP; step /= 2) {
    let climbing = true;
    while (climbing) {
      climbing = false;
      for (const [axis, { low, high }] of widths.entries()) {
        if (low === high) continue;
        for (const by of [step, -step]) {
          const place = moved((best as { place: Place }).place, axis, by);
          if (place !== undefined && offer(place, stateOf(envelope, place))) climbing = true;
        }
      }
    }
  }
  return best;
}

function moved(place: Place, axis: number, by: number): Place | undefined {
  const from = place[axis] ?? 0;
  const to = Math.max(0, Math.min(1, from + by));
  if (to === from) return undefined;
  return place.map((share, index) => (index === axis ? to : share)) as unknown as Place;
}

function stateOf(envelope: PhaseEnvelope, [temperature, humidity, pressure]: Place): AirState {
  const along = ({ low, high }: Span, share: number): number => low + (high - low) * share;
  return stateAt(
    envelope,
    along(envelope.temperature.value, temperature),
    along(envelope.humidity.value, humidity),
    along(envelope.pressure, pressure),
  );
}
