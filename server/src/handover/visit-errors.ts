/** What the readings of one visit say of the points of its site. */
import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import type { History } from '../evaluate/history/history.ts';
import type { ReadingError } from '../evaluate/history/reading-error.ts';
import type { PointEvaluation } from '../evaluate/point.ts';

export interface ErrorOfVisit {
  readonly point: PointEvaluation;
  readonly history: History;
  readonly error: ReadingError;
}

/** @param visit URI of the visit file */
export function errorsOfVisit({ points }: EvaluatedSite, visit: string): readonly ErrorOfVisit[] {
  return [...points.values()].flatMap((point) =>
    [...point.histories.values()].flatMap((history) =>
      history.errors.filter(({ reading }) => reading.file === visit).map((error) => ({ point, history, error })),
    ),
  );
}

/** Largest En number, either side, that agrees (ISO 13528). */
const AGREES_TO = 1;

/** Undefined where nobody can tell. */
export function agrees({ enNumber }: ReadingError): boolean | undefined {
  return enNumber === undefined ? undefined : Math.abs(enNumber) <= AGREES_TO;
}
