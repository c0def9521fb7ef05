/** Writes a value in another unit of its dimension. */
import type { Analysis } from '../../../analysis/analysis.ts';
import { DIMENSIONS, type Unit } from '../../../quantity/dimension.ts';
import { formatNumber } from '../../../quantity/format-quantity.ts';
import { readRange } from '../../../quantity/read-quantity.ts';
import { takeApart } from '../../../quantity/value-form.ts';
import type { Location } from '../../../syntax/locate.ts';
import { dimensionAt } from '../../support/place-dimension.ts';
import { type Refactoring, replacing } from './refactoring.ts';

/** Enough to be read back as the same value to the digits that anybody types. */
const SIGNIFICANT_DIGITS = 6;

export function unitConversions({ file, parsed }: Analysis, location: Location): readonly Refactoring[] {
  const { node, on, partOffset } = location;
  if (on !== 'value' || node.kind !== 'scalar' || node.textStart === undefined) return [];
  const dimension = dimensionAt(parsed.kind, location);
  const form = takeApart(node.text);
  const read = dimension === undefined ? undefined : readRange(node.text, dimension);
  if (dimension === undefined || form === undefined || read?.ok !== true) return [];
  const { low, high, unit } = read.value.value;
  const start = partOffset + node.textStart;
  const range = { start: start + form.numbersRange.start, end: start + form.symbolRange.end };
  return DIMENSIONS[dimension].units
    .filter((other) => isExchangeable(unit, other))
    .map((other) => {
      const numbers = [low, ...(form.highText === undefined ? [] : [high])].map((value) => numberIn(value, other));
      const text = `${numbers.join(' .. ')} ${other.symbol}`;
      return replacing(file, range, text, `Write as ${text}${form.gauge ? '(g)' : ''}`);
    });
}

/** Months and years go by the calendar, which no number of days says. */
function isExchangeable(unit: Unit, other: Unit): boolean {
  return unit.symbol !== other.symbol && (unit.months === undefined) === (other.months === undefined);
}

function numberIn(canonical: number, unit: Unit): string {
  const value = (canonical - unit.offset) / unit.factor;
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return formatNumber(value, Math.max(0, SIGNIFICANT_DIGITS - 1 - magnitude));
}
