/** Propagation of distributions by Monte Carlo (JCGM 101:2008), for checking first-order budgets. Seeded. */

/** Numbers spread evenly over [0, 1). */
export type RandomSource = () => number;

export type Draw = (random: RandomSource) => number;

export interface MonteCarloResult {
  readonly mean: number;
  readonly standardUncertainty: number;
  /** The shortest interval that holds the asked probability. */
  readonly shortestInterval: readonly [number, number];
  /** The interval that leaves equal probability on either side. */
  readonly symmetricInterval: readonly [number, number];
}

/** Runs a model over draws of its inputs. */
export function propagateDistributions(
  model: (values: readonly number[]) => number,
  draws: readonly Draw[],
  trials: number,
  probability: number,
  seed: number,
): MonteCarloResult {
  const random = seededRandom(seed);
  const results = new Float64Array(trials);
  for (let trial = 0; trial < trials; trial++) results[trial] = model(draws.map((draw) => draw(random)));
  results.sort();
  const mean = results.reduce((sum, value) => sum + value, 0) / trials;
  const variance = results.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (trials - 1);
  return {
    mean,
    standardUncertainty: Math.sqrt(variance),
    shortestInterval: shortestInterval(results, probability),
    symmetricInterval: intervalFrom(results, Math.round((trials * (1 - probability)) / 2), probability),
  };
}

export function normal(mean: number, standardUncertainty: number): Draw {
  return (random) => mean + standardUncertainty * standardNormal(random);
}

export function rectangular(low: number, high: number): Draw {
  return (random) => low + (high - low) * random();
}

/** JCGM 101, 6.4.6: U-shaped between the limits. */
export function arcsine(low: number, high: number): Draw {
  return (random) => (low + high) / 2 + ((high - low) / 2) * Math.sin(2 * Math.PI * random());
}

/** JCGM 101, 6.4.3: rectangular between limits that are themselves only known within ±inexactness. */
export function curvilinearTrapezoid(low: number, high: number, inexactness: number): Draw {
  return (random) => {
    const lowDrawn = low + inexactness * (2 * random() - 1);
    return lowDrawn + (low + high - 2 * lowDrawn) * random();
  };
}

/** JCGM 101, 6.4.9: scaled and shifted t distribution. */
export function student(mean: number, scale: number, degreesOfFreedom: number): Draw {
  return (random) => {
    let chiSquared = 0;
    for (let n = 0; n < degreesOfFreedom; n++) chiSquared += standardNormal(random) ** 2;
    return mean + (scale * standardNormal(random)) / Math.sqrt(chiSquared / degreesOfFreedom);
  };
}

/** A multiplicative congruential generator of 31 bits, Park and Miller's minimal standard with multiplier 48271. */
export function seededRandom(seed: number): RandomSource {
  const modulus = 2 ** 31 - 1;
  let state = (seed % (modulus - 1)) + 1;
  return () => {
    state = (state * 48_271) % modulus;
    return state / modulus;
  };
}

/** Box and Muller 1958. */
function standardNormal(random: RandomSource): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

function shortestInterval(sorted: Float64Array, probability: number): readonly [number, number] {
  const width = (first: number): number => {
    const [low, high] = intervalFrom(sorted, first, probability);
    return high - low;
  };
  const last = sorted.length - Math.round(sorted.length * probability);
  let shortest = 0;
  for (let first = 0; first < last; first++) if (width(first) < width(shortest)) shortest = first;
  return intervalFrom(sorted, shortest, probability);
}

function intervalFrom(sorted: Float64Array, first: number, probability: number): readonly [number, number] {
  const last = Math.min(sorted.length - 1, first + Math.round(sorted.length * probability));
  return [sorted[first] ?? Number.NaN, sorted[last] ?? Number.NaN];
}
