/** Numbers that a file or a kit has to give before something can be computed, or the words for what is lacking. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Located } from '../../model/located.ts';
import type { Quantity } from '../../quantity/quantity.ts';

/** A value, or in a few words what would have to be given: 'no air speed is given'. */
export type Given<Value> = Outcome<Value, string>;

export function given<Value>(value: Value | undefined, lacking: string): Given<Value> {
  return value === undefined ? fail(lacking) : succeed(value);
}

/** A quantity above zero: a length or power of nothing is as good as none. */
export function positive(located: Located<Quantity> | undefined, lacking: string): Given<number> {
  const value = located?.value.value;
  return value === undefined || !(value > 0) ? fail(lacking) : succeed(value);
}
