/**
 * The result of something that can fail in an expected way: either a value or one typed problem.
 * Parsing and evaluating return outcomes and never throw.
 */
export type Outcome<Value, Problem> = Success<Value> | Failure<Problem>;

export interface Success<Value> {
  readonly ok: true;
  readonly value: Value;
}

export interface Failure<Problem> {
  readonly ok: false;
  readonly problem: Problem;
}

export function succeed<Value>(value: Value): Success<Value> {
  return { ok: true, value };
}

export function fail<Problem>(problem: Problem): Failure<Problem> {
  return { ok: false, problem };
}

/** The value of an outcome, or undefined where it failed. */
export function valueIfOk<Value>(outcome: Outcome<Value, unknown>): Value | undefined {
  return outcome.ok ? outcome.value : undefined;
}
