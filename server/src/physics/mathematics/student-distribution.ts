/** Student's t distribution for whole degrees of freedom, as coverage factors need it. */
import { endOf } from './bisection.ts';
import { normalQuantile } from './normal-distribution.ts';

/** From here on t and normal quantiles differ by less than 5e-5 at 99 %. */
const PRACTICALLY_NORMAL = 100_000;

const HIGHEST_CONFIDENCE = 0.999999;

/**
 * Probability that a t-distributed number lies within ±t.
 *
 * The finite sums of Abramowitz and Stegun 26.7.3 (odd) and 26.7.4 (even); exact but for rounding, about 1e-13.
 *
 * Worked value (Abramowitz and Stegun, table 26.10): t 2.120, 16 degrees of freedom gives 0.95.
 *
 * @param t 0 or more
 * @param degreesOfFreedom whole, 1 or more
 */
export function studentProbabilityWithin(t: number, degreesOfFreedom: number): number {
  const angle = Math.atan(t / Math.sqrt(degreesOfFreedom));
  const cosineSquared = degreesOfFreedom / (degreesOfFreedom + t * t);
  const isOdd = degreesOfFreedom % 2 === 1;
  if (degreesOfFreedom === 1) return (2 / Math.PI) * angle;
  let term = isOdd ? Math.sqrt(cosineSquared) : 1;
  let sum = term;
  for (let power = isOdd ? 3 : 2; power <= degreesOfFreedom - 2; power += 2) {
    term *= (cosineSquared * (power - 1)) / power;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/**
 * Coverage factor k: a t-distributed number lies within ±k with probability `confidence`.
 *
 * The degrees of freedom are cut to a whole number, as JCGM 100 G.4.1 has it, and to 1 at the least; left out, they
 * are without limit and the normal distribution's factor is given. Bisection on `studentProbabilityWithin`, to 1e-11.
 *
 * Worked value (JCGM 100 H.1.6): 99 %, 16 degrees of freedom gives 2.92.
 *
 * @param confidence 0 to 1, such as 0.95; above 0.999999 it is taken as that
 */
export function coverageFactorFor(confidence: number, degreesOfFreedom?: number): number {
  const covered = Math.min(confidence, HIGHEST_CONFIDENCE);
  if (degreesOfFreedom === undefined || degreesOfFreedom > PRACTICALLY_NORMAL) {
    return normalQuantile((1 + covered) / 2);
  }
  const whole = Math.max(1, Math.floor(degreesOfFreedom));
  const isTooSmall = (factor: number): boolean => studentProbabilityWithin(factor, whole) < covered;
  let high = 1;
  while (isTooSmall(high)) high *= 2;
  return endOf(isTooSmall, 0, high);
}
