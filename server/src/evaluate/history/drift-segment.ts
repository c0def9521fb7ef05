/**
 * The readings of one quantity that a drift can be fitted through. What a point was adjusted by is taken out of its
 * later readings' past: every earlier error is moved by the adjustments made after it, so that all stand as if the point
 * had been adjusted then as it is now, and the drift runs on across adjustments. A visit that puts the point into
 * service, mends it, or adjusts it without saying what it showed before, begins a new segment.
 */
import type { CalendarDate } from '../../model/model-types.generated.ts';
import type { ReadingError } from './reading-error.ts';

/** The pairs of one quantity that were read on one visit. */
export interface CheckedVisit {
  readonly date: CalendarDate;
  /** Before anything was adjusted; a pair without a state counts as such while the point is in service. */
  readonly asFound: readonly ReadingError[];
  /** After it. */
  readonly asLeft: readonly ReadingError[];
  /** Nothing that was read before tells how the point drifts from here on. */
  readonly isFresh: boolean;
}

/** A reading of a segment, as if the point had been adjusted then as it is now. */
export interface DriftedError {
  readonly date: CalendarDate;
  readonly error: number;
  readonly of: ReadingError;
}

/** From a visit on nothing was adjusted until the next stretch begins. */
export interface UnadjustedStretch {
  readonly from: CalendarDate;
  /** What the point was adjusted by since then, all together. */
  readonly adjustedSince: number;
}

export interface DriftSegment {
  /** The oldest first. */
  readonly errors: readonly DriftedError[];
  readonly visits: number;
  /** The last one goes on today. */
  readonly stretches: readonly UnadjustedStretch[];
  readonly last: CalendarDate;
}

/** @param errors the oldest first */
export function checkedVisits(errors: readonly ReadingError[]): readonly CheckedVisit[] {
  const files = new Set(errors.map(({ reading }) => reading.file));
  return [...files].flatMap((file) => {
    const ofVisit = errors.filter(({ reading }) => reading.file === file);
    const [first] = ofVisit;
    if (first === undefined) return [];
    const { date, purpose } = first.reading;
    const entersService = purpose === 'commissioning' || purpose === 'repair';
    const stateless = entersService ? 'as-left' : 'as-found';
    const inState = (state: 'as-found' | 'as-left'): readonly ReadingError[] =>
      ofVisit.filter(({ reading }) => (reading.state ?? stateless) === state);
    const [asFound, asLeft] = [inState('as-found'), inState('as-left')];
    return [{ date, asFound, asLeft, isFresh: entersService || asFound.length === 0 }];
  });
}

/** The segment that goes on today; undefined without any reading that is of use. @param visits the oldest first */
export function presentSegment(visits: readonly CheckedVisit[]): DriftSegment | undefined {
  const errors: DriftedError[] = [];
  const stretches: UnadjustedStretch[] = [];
  let [adjustedSince, count] = [0, 0];
  for (const { date, asFound, asLeft, isFresh } of visits.toReversed()) {
    if (stretches[0]?.adjustedSince === adjustedSince) stretches.shift();
    stretches.unshift({ from: date, adjustedSince });
    if (!isFresh && asLeft.length > 0) adjustedSince += mean(asLeft) - mean(asFound);
    const kept = isFresh ? asLeft : asFound;
    errors.unshift(...kept.map((of) => ({ date, error: of.error + adjustedSince, of })));
    count += kept.length > 0 ? 1 : 0;
    if (isFresh) break;
  }
  const last = visits.at(-1)?.date;
  return last === undefined || count === 0 ? undefined : { errors, visits: count, stretches, last };
}

function mean(errors: readonly ReadingError[]): number {
  return errors.reduce((sum, { error }) => sum + error, 0) / errors.length;
}
