/** How fast the error of a point grows, and when it is predicted to reach the tolerance. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { CalendarDate } from '../../model/model-types.generated.ts';
import { coverageFactorFor } from '../../physics/mathematics/student-distribution.ts';
import { intervalForLimits } from '../../physics/metrology/calibration-interval.ts';
import { type DriftFit, driftAt, fitDrift } from '../../physics/metrology/drift-fit.ts';
import { daysAfter, daysBetween, YEAR_DAYS } from '../facts/calendar.ts';
import type { DriftSegment } from './drift-segment.ts';

/** Times are in days from the last visit, errors in the difference of the quantity. */
export interface Drift {
  readonly segment: DriftSegment;
  readonly fit: DriftFit;
  readonly perYear: number;
  /** Half-width of the drift per year at `CONFIDENCE`. */
  readonly perYearUncertainty: number;
  /** False where the readings may as well come from no drift at all. */
  readonly isSignificant: boolean;
  /** How many standard uncertainties the band reaches to either side. */
  readonly k: number;
}

/** When the error reaches the tolerance; each undefined where it does not within `FURTHEST_YEARS`. */
export interface ToleranceReached {
  readonly soonest: CalendarDate | undefined;
  readonly expected: CalendarDate | undefined;
  readonly latest: CalendarDate | undefined;
}

/** Of drifts, bands and dates. */
export const CONFIDENCE = 0.95;

/** Two visits always lie on a line, and tell nothing of how well it fits. */
const VISITS_NEEDED = 3;

/** No drift is predicted for longer. Common practice, no source. */
export const FURTHEST_YEARS = 10;

/** The drift through the readings of a segment, or in words what is lacking. */
export function driftOf(segment: DriftSegment | undefined, coverage: number): Outcome<Drift, string> {
  const visits = segment?.visits ?? 0;
  if (segment === undefined || visits < VISITS_NEEDED) return fail(visitsLacking(visits));
  const fit = fitDrift(
    segment.errors.map(({ date, error, of }) => {
      const { referenceUncertainty } = of.reading;
      const elapsed = daysBetween(segment.last, date);
      return referenceUncertainty === undefined
        ? { elapsed, value: error }
        : { elapsed, value: error, standardUncertainty: referenceUncertainty / coverage };
    }),
  );
  if (fit === undefined) return fail('all readings are of one day');
  const k = coverageFactorFor(CONFIDENCE, fit.degreesOfFreedom);
  const perYear = fit.coefficients[1] * YEAR_DAYS;
  const perYearUncertainty = k * Math.sqrt(fit.variances[1]) * YEAR_DAYS;
  return succeed({
    segment,
    fit,
    perYear,
    perYearUncertainty,
    isSignificant: Math.abs(perYear) > perYearUncertainty,
    k,
  });
}

function visitsLacking(visits: number): string {
  return `a drift needs readings from ${VISITS_NEEDED} visits since the point was put into service, mended or adjusted unseen, and there are ${visits === 0 ? 'none' : visits}`;
}

/** Where the drift stands on a day, with the half-width of its band. */
export function driftOn(
  { fit, k, segment }: Drift,
  day: CalendarDate,
): { readonly error: number; readonly reach: number } {
  const { value, readingUncertainty } = driftAt(fit, daysBetween(segment.last, day));
  return { error: value, reach: k * readingUncertainty };
}

export function toleranceReached(drift: Drift, tolerance: number): ToleranceReached {
  const day = (k: number): CalendarDate | undefined => {
    const days = daysWithin(drift, tolerance, k, FURTHEST_YEARS * YEAR_DAYS);
    return days === undefined ? undefined : daysAfter(drift.segment.last, days);
  };
  return { soonest: day(drift.k), expected: day(0), latest: day(-drift.k) };
}

/**
 * Days from the last visit for which the error stays within the tolerance.
 * @param k how many standard uncertainties it may be beyond the drift
 */
export function daysWithin({ fit }: Drift, tolerance: number, k: number, longest: number): number | undefined {
  return intervalForLimits(fit, { low: -tolerance, high: tolerance }, k, longest);
}
