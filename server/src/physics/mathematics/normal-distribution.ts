/** The standard normal distribution and its inverse. */

const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Beyond this the series below loses digits to its tail, and the continued fraction is quick. */
const SERIES_REACH = 3;
const CONTINUED_FRACTION_TERMS = 60;

/** Probabilities closer to 0 or 1 than this are taken as this: no double number holds their quantile's digits. */
const LEAST_PROBABILITY = 1e-15;

/** Density of the standard normal distribution at z. */
function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / SQRT_TWO_PI;
}

/**
 * Probability that a standard normal number is no more than z.
 *
 * Within 3 of the middle Φ(z) = ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …), Abramowitz and Stegun 26.2.11; further out the
 * continued fraction of the tail, 26.2.14. Relative error below 1e-13 in either tail while |z| is below 30.
 *
 * Worked value (Abramowitz and Stegun, table 26.1): z 1 gives 0.841344746.
 *
 * @param z dimensionless
 */
export function normalProbability(z: number): number {
  if (z < -SERIES_REACH) return upperTail(-z);
  if (z > SERIES_REACH) return 1 - upperTail(z);
  let term = z;
  let sum = z;
  for (let divisor = 3; Math.abs(term) > 1e-17 * Math.abs(sum); divisor += 2) {
    term *= (z * z) / divisor;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/**
 * The number that a standard normal one stays under with this probability.
 *
 * Abramowitz and Stegun 26.2.23 (error below 4.5e-4), then Newton's steps on `normalProbability`: absolute error below
 * 1e-9. Probabilities below 1e-15, or that close to 1, are taken as that.
 *
 * Worked value (Abramowitz and Stegun, table 26.5): 0.975 gives 1.959964.
 *
 * @param probability 0 to 1
 */
export function normalQuantile(probability: number): number {
  const bounded = Math.min(Math.max(probability, LEAST_PROBABILITY), 1 - LEAST_PROBABILITY);
  const tail = Math.min(bounded, 1 - bounded);
  let z = -firstQuantile(tail);
  for (let step = 0; step < 4; step++) z -= (normalProbability(z) - tail) / normalDensity(z);
  return bounded < 0.5 ? z : -z;
}

/** z > 0, from the outermost term of the fraction inwards: φ(z)/(z + 1/(z + 2/(z + 3/(z + …)))). */
function upperTail(z: number): number {
  let fraction = z;
  for (let term = CONTINUED_FRACTION_TERMS; term >= 1; term--) fraction = z + term / fraction;
  return normalDensity(z) / fraction;
}

/** Abramowitz and Stegun 26.2.23, for the upper tail. */
function firstQuantile(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail));
  const numerator = 2.515517 + t * (0.802853 + t * 0.010328);
  const denominator = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - numerator / denominator;
}
