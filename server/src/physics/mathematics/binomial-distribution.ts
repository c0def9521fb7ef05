/** The binomial distribution: how many of several independent checks succeed. */
import { endOf } from './bisection.ts';

/**
 * Probability of at most so many successes.
 *
 * Σ C(n, i)·pⁱ·(1 − p)ⁿ⁻ⁱ from i = 0 on, each term from its logarithm, so that many checks do not underflow; about 1e-12.
 *
 * Worked value (by hand): at most 1 of 2 with probability 0.5 has 0.75.
 *
 * @param successes whole, 0 or more
 * @param trials whole, 1 or more
 * @param probability of each success, 0 to 1
 */
export function binomialProbability(successes: number, trials: number, probability: number): number {
  if (successes < 0) return 0;
  if (successes >= trials) return 1;
  if (probability >= 1) return 0;
  const odds = Math.log(probability / (1 - probability));
  let logTerm = trials * Math.log1p(-probability);
  let sum = Math.exp(logTerm);
  for (let count = 1; count <= successes; count++) {
    logTerm += odds + Math.log((trials - count + 1) / count);
    sum += Math.exp(logTerm);
  }
  return Math.min(1, sum);
}

/**
 * The range of probabilities that so many successes do not contradict, Clopper and Pearson 1934.
 *
 * Worked value (NCSL RP-1 method A3, tutorial data of 2019): 15 of 20, confidence 0.5: 0.6516 to 0.8286.
 *
 * @param successes whole, 0 up to `trials`
 * @param trials whole, 1 or more
 * @param confidence that the range holds the probability, 0 to 1
 */
export function probabilityRange(
  successes: number,
  trials: number,
  confidence: number,
): { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2;
  return {
    low: endOf((probability) => 1 - binomialProbability(successes - 1, trials, probability) < tail, 0, 1),
    high: endOf((probability) => binomialProbability(successes, trials, probability) > tail, 0, 1),
  };
}
