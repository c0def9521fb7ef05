/** What a report names as the source of its air temperature. */
import { type Outcome, succeed } from '../base/outcome.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { type ReadProblem, type ReadResult, readQuantity } from '../quantity/read-quantity.ts';

export type AirTemperatureSource =
  | { readonly kind: 'air-temperature-probe' }
  | { readonly kind: 'humidity-probe' }
  | { readonly kind: 'point'; readonly tag: string }
  | { readonly kind: 'fixed'; readonly temperature: Quantity };

/** A number, alone or with something like a unit behind it; a tag such as `101-MT` has more in it. */
const LIKE_A_VALUE = /^[+\u2212-]?[\d.,]+\s*[^\d\s-]*$/;

export function readAirTemperatureSource(text: string): Outcome<ReadResult<AirTemperatureSource>, ReadProblem> {
  const word = text.trim();
  if (word === 'air-temperature-probe' || word === 'humidity-probe') return succeed({ value: { kind: word } });
  if (LIKE_A_VALUE.test(word)) {
    const read = readQuantity(text, 'temperature');
    if (!read.ok) return read;
    return succeed({ value: { kind: 'fixed', temperature: read.value.value } });
  }
  return succeed({ value: { kind: 'point', tag: word } });
}
