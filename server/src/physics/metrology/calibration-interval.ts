/** How long a measuring instrument may go until its next check: from how its errors grew, or from how often it passed. */

import type { Formula } from '../formula.ts';
import { binomialProbability, probabilityRange } from '../mathematics/binomial-distribution.ts';
import { endOf } from '../mathematics/bisection.ts';
import type { ToleranceLimits } from './decision.ts';
import { type DriftFit, driftAt } from './drift-fit.ts';

/** drift(t) ± k · u(t) within the limits; u² = scatter² + u²(drift) */
export const VARIABLES_DATA_METHOD: Formula = {
  id: 'variables-data-interval',
  title: 'Interval from variables data',
  source: 'NASA-HDBK-8739.19-5, interval from variables data',
  validity: [],
};

/** I = I0 · (1 - C + C · 10^(R - target)), C the confidence that R differs from the target */
export const TEST_INTERVAL_METHOD: Formula = {
  id: 'test-interval',
  title: 'Interval by test against a target',
  source: 'NCSL RP-1, method A3 (form from memory; it reproduces the published figures)',
  validity: [],
};

/** The interval is looked for in so many even steps, and then refined: more than the turns that a drift can take. */
const STEPS = 200;

/**
 * Time until a drifting error reaches a limit; the unit is that of the fit.
 *
 * drift ± k·u against the limits, NASA-HDBK-8739.19-5: with k for a confidence it is how long the error can be said to
 * lie within them.
 *
 * Worked values (its tables 7-5 to 7-7): from 10.03 with u0 0.28, and 90 %, 140.1 d for 9 to 11 and 171.75 d for up to 11.
 *
 * @param k how many standard uncertainties the error may be beyond the drift: above 0 for the soonest time, 0 for the
 *   drift itself, below 0 for the latest
 * @param longest time that is looked at
 * @returns 0 where a limit is passed at once, undefined where both are kept until the longest time
 */
export function intervalForLimits(
  fit: DriftFit,
  { low = -Infinity, high = Infinity }: ToleranceLimits,
  k: number,
  longest: number,
): number | undefined {
  return firstTime((elapsed) => {
    const { value, readingUncertainty } = driftAt(fit, elapsed);
    return value + k * readingUncertainty > high || value - k * readingUncertainty < low;
  }, longest);
}

function firstTime(isPassed: (elapsed: number) => boolean, longest: number): number | undefined {
  if (isPassed(0)) return 0;
  for (let step = 1; step <= STEPS; step++) {
    const [before, elapsed] = [(longest * (step - 1)) / STEPS, (longest * step) / STEPS];
    if (isPassed(elapsed)) return endOf((time) => !isPassed(time), before, elapsed);
  }
  return undefined;
}

/** Checks that were made at one interval. */
export interface IntervalRecord {
  /** In any unit. */
  readonly interval: number;
  /** Checks that found the instrument within its tolerance; whole, 0 up to `checks`. */
  readonly inTolerance: number;
  /** Whole, 1 or more. */
  readonly checks: number;
}

export interface TestedInterval {
  /** In the unit of the record. */
  readonly interval: number;
  /** That the share found within tolerance differs from the target, 0 to 1. */
  readonly rejectionConfidence: number;
  /** The shares that the record does not contradict, at the confidence asked for. */
  readonly observed: { readonly low: number; readonly high: number };
}

/** An interval is at most halved or doubled in one step. Common practice, no source. */
export const LARGEST_CHANGE = 2;

/**
 * Tests an interval against the share of checks that should find the instrument within its tolerance, and changes it
 * where the record differs from that with the confidence asked for.
 *
 * NCSL RP-1 method A3: `TEST_INTERVAL_METHOD`, with the two-sided binomial test. A single check says little and changes little.
 *
 * Worked value (tutorial data of 2019): 15 of 20 at 365 d, target 0.95: 231 d, rejected with confidence 0.9949.
 *
 * @param target share within tolerance, 0 to 1
 * @param confidence from which on the interval is changed, 0 to 1
 */
export function testedInterval(record: IntervalRecord, target: number, confidence: number): TestedInterval {
  const { interval, inTolerance, checks } = record;
  const atMost = binomialProbability(inTolerance, checks, target);
  const atLeast = 1 - binomialProbability(inTolerance - 1, checks, target);
  const rejectionConfidence = Math.max(0, 1 - 2 * Math.min(atMost, atLeast));
  const observed = probabilityRange(inTolerance, checks, confidence);
  if (rejectionConfidence < confidence) return { interval, rejectionConfidence, observed };
  const factor = 1 - rejectionConfidence + rejectionConfidence * 10 ** (inTolerance / checks - target);
  const bounded = Math.min(LARGEST_CHANGE, Math.max(1 / LARGEST_CHANGE, factor));
  return { interval: interval * bounded, rejectionConfidence, observed };
}
