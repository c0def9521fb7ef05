/**
 * The worst corner of an envelope: searched over the whole box, never assumed to be a corner of it. The box is sampled
 * once per envelope, the corners that the cut at saturation gives it and the end of ice included; each search takes the
 * best sample and climbs from there while a small step still helps.
 */

import type { Span } from '../../base/span.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { TRIPLE_POINT_CELSIUS } from '../../physics/constants.ts';
import { cutTemperatures, type PhaseEnvelope, stateAt } from './envelope.ts';

/** A place in the box: air temperature in °C, share of the possible humidity range, pressure in Pa. */
type Place = readonly [number, number, number];

interface Sample {
  readonly place: Place;
  readonly state: AirState;
}

export interface SampledEnvelope {
  readonly envelope: PhaseEnvelope;
  readonly samples: readonly Sample[];
  /** Each with the next along an axis. */
  readonly neighbours: readonly (readonly [Sample, Sample])[];
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
  const { temperature, humidity, pressure } = envelope;
  const shares = humidity.value.low === humidity.value.high ? [0] : evenly(SHARES, STEPS);
  const { low, high } = temperature.value;
  const endOfIce = low < TRIPLE_POINT_CELSIUS && TRIPLE_POINT_CELSIUS < high ? [TRIPLE_POINT_CELSIUS] : [];
  const grid = evenly(pressure, STEPS).map((pascal) => {
    const temperatures = [...evenly(temperature.value, STEPS), ...endOfIce, ...cutTemperatures(envelope, pascal)];
    temperatures.sort((one, other) => one - other);
    return temperatures.map((celsius) => shares.map((share) => sampleAt(envelope, [celsius, share, pascal])));
  });
  return { envelope, samples: grid.flat(2), neighbours: neighboursIn(grid) };
}

function sampleAt(envelope: PhaseEnvelope, place: Place): Sample {
  return { place, state: stateAt(envelope, ...place) };
}

/** @param grid by pressure, temperature and share */
function neighboursIn(grid: readonly (readonly (readonly Sample[])[])[]): readonly (readonly [Sample, Sample])[] {
  const neighbours: (readonly [Sample, Sample])[] = [];
  for (const [p, atPressure] of grid.entries()) {
    for (const [t, atTemperature] of atPressure.entries()) {
      for (const [s, sample] of atTemperature.entries()) {
        const next = [atTemperature[s + 1], atPressure[t + 1]?.[s], grid[p + 1]?.[t]?.[s]];
        for (const other of next) if (other !== undefined) neighbours.push([sample, other]);
      }
    }
  }
  return neighbours;
}

/** Between two neighbours; a table with more rows than a person writes must not cost more. */
const MOST_JUMPS = 4;

/**
 * With samples on either side of the jumps between two neighbours: a climb up to a jump that runs diagonally through
 * the box would end far from the highest value beside it.
 *
 * @param pieceAt the number of the piece in which the function is smooth
 */
export function sampledAtJumps(sampled: SampledEnvelope, pieceAt: (state: AirState) => number): SampledEnvelope {
  const { envelope, samples, neighbours } = sampled;
  const pieces = new Map(samples.map((sample) => [sample, pieceAt(sample.state)]));
  const besideJumps: Sample[] = [];
  for (const [from, end] of neighbours) {
    let start = from;
    for (let jumps = 0; jumps < MOST_JUMPS && pieces.get(start) !== pieces.get(end); jumps++) {
      const piece = pieces.get(start);
      const [before, after] = jumpBetween(envelope, start, end, ({ state }) => pieceAt(state) === piece);
      besideJumps.push(before, after);
      pieces.set(after, pieceAt(after.state));
      start = after;
    }
  }
  return besideJumps.length === 0 ? sampled : { ...sampled, samples: [...samples, ...besideJumps] };
}

/** The last sample that is still as at the start, and the first that is not, closer together than a climb can tell. */
function jumpBetween(
  envelope: PhaseEnvelope,
  start: Sample,
  end: Sample,
  isAsAtStart: (sample: Sample) => boolean,
): readonly [Sample, Sample] {
  let [before, after] = [start, end];
  for (let size = 1 / 2; size > FINEST_STEP; size /= 2) {
    const middle = sampleAt(envelope, [
      (before.place[0] + after.place[0]) / 2,
      (before.place[1] + after.place[1]) / 2,
      (before.place[2] + after.place[2]) / 2,
    ]);
    if (isAsAtStart(middle)) before = middle;
    else after = middle;
  }
  return [before, after];
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
    return from !== undefined && placesAround(from, axes, size).some((place) => offer(sampleAt(envelope, place)));
  };
  if (!stepsHelp(FINEST_STEP)) return best;
  for (let size = 1 / (2 * STEPS); size > FINEST_STEP; size /= 2) {
    let climbing = true;
    while (climbing) climbing = stepsHelp(size);
  }
  return best;
}

/** The places one step along each axis, both ways, that lie in the box. */
function placesAround(place: Place, axes: readonly Span[], size: number): readonly Place[] {
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
