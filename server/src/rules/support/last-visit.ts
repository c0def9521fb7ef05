import type { CheckDue } from '../../evaluate/checks/due.ts';
import type { Related } from '../rule.ts';

/** The visit that the next check is counted from, where the plan itself does not give the day. */
export function lastVisitIs({ last }: CheckDue): readonly Related[] {
  const { file, date, origin } = last;
  return file === undefined ? [] : [{ message: `The last check was the visit of ${date}`, origin, file }];
}
