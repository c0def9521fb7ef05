/** Guesses which column of a log holds what, from the columns' names, their units and their first values. */
import type { DetectedColumns, LogColumnKey } from '../../evaluate/recorded/answer.ts';
import { type ColumnName, columnName } from './column-names.ts';
import {
  type ColumnUnit,
  columnUnit,
  columnUnits,
  LOG_HUMIDITIES,
  LOG_QUANTITIES,
  type LogQuantity,
  logQuantity,
} from './log-quantities.ts';
import { type TimeFormat, timeFormats } from './time-format.ts';

/** What a log looks like before it is read. */
export interface LogSample {
  readonly headers: readonly string[];
  /** The first rows, as text. */
  readonly rows: readonly (readonly string[])[];
  /** The formats of the columns whose type says that they hold times, by their place. */
  readonly typedTimes: ReadonlyMap<number, TimeFormat>;
}

export function detectColumns(sample: LogSample): DetectedColumns {
  const names = sample.headers.map(columnName);
  const times = timeColumns(names, sample);
  const columns: Partial<Record<LogColumnKey, string>> = {};
  const doubts = [...doubtsOfTime(times, sample)];
  const [time] = times;
  if (time !== undefined) columns.time = time.header;
  const others = names.filter((name) => !times.includes(name));
  for (const quantity of LOG_QUANTITIES) {
    const candidates = candidatesFor(quantity, others, sample);
    const [first] = candidates;
    if (first === undefined) continue;
    columns[quantity] = writtenAs(quantity, first);
    doubts.push(...doubtsOf(quantity, candidates));
  }
  if (columns['air-temperature'] === undefined) doubts.push('No column was found that holds the air temperature.');
  const isDry = LOG_HUMIDITIES.every((name) => columns[name] === undefined);
  if (isDry) doubts.push('No column was found that holds a humidity.');
  return { columns, doubts };
}

function doubtsOfTime(times: readonly ColumnName[], sample: LogSample): readonly string[] {
  const [time, other] = times;
  if (time === undefined) return ['No column was found that holds the time.'];
  if (other !== undefined) return [`${listed(times)} may each be the time.`];
  if (timeFormatsOf(sample, time.index).length === 1) return [];
  return [`The days and months of “${time.header}” cannot be told apart; write them by ISO 8601.`];
}

/** A column that may hold a quantity, and the units in which it may. */
interface Candidate {
  readonly name: ColumnName;
  readonly units: readonly ColumnUnit[];
}

function candidatesFor(quantity: LogQuantity, names: readonly ColumnName[], sample: LogSample): readonly Candidate[] {
  return names
    .filter((name) => mayHold(quantity, name))
    .map((name) => ({ name, units: unitsOf(quantity, name, valuesOf(sample, name.index)) }))
    .filter(({ units }) => units.length > 0);
}

/** A unit that is neither in the column's name nor the usual one is a guess. */
function isGuessed(quantity: LogQuantity, { name, units: [unit] }: Candidate): boolean {
  return name.unit === undefined && unit?.symbol !== logQuantity(quantity).usual;
}

function writtenAs(quantity: LogQuantity, candidate: Candidate): string {
  const { name, units } = candidate;
  return isGuessed(quantity, candidate) ? `${name.header} in ${units[0]?.symbol}` : name.header;
}

function doubtsOf(quantity: LogQuantity, candidates: readonly Candidate[]): readonly string[] {
  const [first, other] = candidates;
  if (first === undefined) return [];
  if (other !== undefined) return [`${listed(candidates.map(({ name }) => name))} may each be the ${words(quantity)}.`];
  const units = first.units.map(({ symbol }) => (symbol === '1' ? '1 (a fraction)' : symbol)).join(' or ');
  const column = `The ${words(quantity)} “${first.name.header}”`;
  if (first.units.length > 1) return [`${column} may be in ${units}.`];
  return isGuessed(quantity, first) ? [`${column} names no unit and seems to be in ${units}.`] : [];
}

/** The formats that the times of a column may have. */
export function timeFormatsOf({ rows, typedTimes }: LogSample, index: number): readonly TimeFormat[] {
  const typed = typedTimes.get(index);
  return typed === undefined ? timeFormats(rows.map((row) => row[index] ?? '')) : [typed];
}

/** A number from the start is a time only where the column's name says so; `t` may be a temperature. */
const NAMES_OF_TIME = /^(t|time|zeit|s|sec|seconds|elapsed(time)?|timestamp)$/;

function timeColumns(names: readonly ColumnName[], sample: LogSample): readonly ColumnName[] {
  const all = names.map((name) => ({ name, formats: timeFormatsOf(sample, name.index) }));
  const byCalendar = all.filter(({ formats }) => formats.some(({ clock }) => clock !== 'start'));
  const found =
    byCalendar.length > 0 ? byCalendar : all.filter(({ name, formats }) => formats.length > 0 && isCount(name, sample));
  return found.map(({ name }) => name);
}

function isCount({ name, index }: ColumnName, sample: LogSample): boolean {
  const values = valuesOf(sample, index);
  return NAMES_OF_TIME.test(name) && values.every((value, row) => row === 0 || value > (values[row - 1] ?? value));
}

function mayHold(quantity: LogQuantity, { name, unit }: ColumnName): boolean {
  const { names, dimension } = logQuantity(quantity);
  return names.test(name) && (unit === undefined || columnUnit(dimension, unit) !== undefined);
}

/** The units that a column may have: its own, else the usual one, else the others in which its values are plausible. */
function unitsOf(quantity: LogQuantity, { unit }: ColumnName, values: readonly number[]): readonly ColumnUnit[] {
  const { dimension, usual, plausible } = logQuantity(quantity);
  const own = columnUnit(dimension, unit ?? usual);
  const isPlausible = ({ factor, offset }: ColumnUnit): boolean => {
    const inside = values.filter(
      (value) => value * factor + offset >= plausible[0] && value * factor + offset <= plausible[1],
    );
    return inside.length >= 0.9 * values.length;
  };
  if (unit !== undefined && own !== undefined) return [own];
  const others = columnUnits(quantity).filter((other) => other !== own && isPlausible(other));
  if (quantity === 'relative-humidity' && own !== undefined && values.length > 0) {
    const fraction = others.find(({ symbol }) => symbol === '1');
    if (fraction !== undefined) return [own, fraction];
  }
  return own !== undefined && isPlausible(own) ? [own] : others;
}

function valuesOf({ rows }: LogSample, index: number): readonly number[] {
  return rows.flatMap((row) => {
    const text = (row[index] ?? '').trim().replace(',', '.');
    return text === '' || !Number.isFinite(Number(text)) ? [] : [Number(text)];
  });
}

function listed(names: readonly ColumnName[]): string {
  return names.map(({ header }) => `“${header}”`).join(' and ');
}

function words(quantity: LogQuantity): string {
  return quantity.replaceAll('-', ' ');
}
