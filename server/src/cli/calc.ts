/** `dewright calc KEY=VALUE ...`: one state of moist air. */
import { type MoistAirState, stateOfKnown } from '../evaluate/air/known-state.ts';
import { type Dimension, inUnit, unitOf as unitNamed } from '../quantity/dimension.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { isQuantityName, QUANTITY_NAMES, type QuantityName, quantityInfo } from '../quantity/quantities.ts';
import { readQuantity } from '../quantity/read-quantity.ts';
import { type Call, choice } from './call.ts';
import { rounded } from './formats/json.ts';
import { CallProblem, nearestHint } from './problem.ts';

const SEA_LEVEL = 101_325;

export function calc(call: Call): number {
  const format = choice(call, 'format', ['text', 'json'], 'text');
  const known = new Map<QuantityName, number>();
  const given = new Set<string>();
  const assumed = new Set<string>();
  let pressure: number | undefined;
  let otherPressure: number | undefined;
  for (const word of call.rest) {
    const [key = '', text] = splitOnce(word);
    if (text === undefined) throw new CallProblem(`${word}: written KEY=VALUE, such as air-temperature='60 degC'`);
    if (given.has(key)) throw new CallProblem(`${key}: given twice`);
    given.add(key);
    if (key === 'pressure') pressure = read(key, text, 'pressure', assumed);
    else if (key === 'at-pressure') otherPressure = read(key, text, 'pressure', assumed);
    else if (isQuantityName(key)) known.set(key, read(key, text, quantityInfo(key).dimension, assumed));
    else
      throw new CallProblem(
        `${key}: not a quantity${nearestHint(key, [...QUANTITY_NAMES, 'pressure', 'at-pressure'])}`,
      );
  }
  const state = stateOfKnown(known, pressure ?? SEA_LEVEL, otherPressure);
  if (!state.ok) throw new CallProblem(state.problem);
  if (pressure === undefined) assumed.add('No pressure was given: that of sea level is taken, 101.325 kPa.');
  const shown = { ...state.value, notes: [...assumed, ...state.value.notes] };
  process.stdout.write(`${format === 'json' ? calcJson(shown) : calcText(shown)}\n`);
  return 0;
}

function calcJson({ pressure, quantities, formulas, notes }: MoistAirState): string {
  const values = [...quantities].map(([name, value]) => {
    const { unit, number } = unitOf(name);
    return [name, { value: rounded(number(value)), unit }];
  });
  const result = {
    version: 1,
    pressure: { value: rounded(pressure / 1e3), unit: 'kPa' },
    quantities: Object.fromEntries(values),
    sources: [...new Set(formulas.map(({ source }) => source))],
    notes,
  };
  return JSON.stringify(result, undefined, 1);
}

function calcText({ pressure, quantities, formulas, notes }: MoistAirState): string {
  const rows = [...quantities].map(([name, value]) => {
    const { unit, number } = unitOf(name);
    const shown = number(value);
    const digits = shown === 0 ? 0 : Math.max(0, 5 - Math.floor(Math.log10(Math.abs(shown))));
    return `${name.padEnd(26)}${formatNumber(shown, digits).padStart(12)} ${unit}`;
  });
  const sources = [...new Set(formulas.map(({ title }) => title))].map((title) => `by ${title}`);
  return [
    `at a pressure of ${showQuantity(pressure, 'pressure')}`,
    ...rows,
    '',
    ...sources,
    ...notes.map((note) => `note: ${note}`),
  ].join('\n');
}

/** What a value is told in, and how much of the canonical unit that is. */
function unitOf(name: QuantityName): { readonly unit: string; readonly number: (value: number) => number } {
  const { dimension, unit: symbol } = quantityInfo(name);
  const unit = unitNamed(dimension, symbol);
  return { unit: symbol, number: (value) => (unit === undefined ? value : inUnit(value, unit)) };
}

function read(key: string, text: string, dimension: Dimension, assumed: Set<string>): number {
  const quantity = readQuantity(text, dimension);
  if (!quantity.ok) throw new CallProblem(`${key}: ${quantity.problem.sentence}`);
  const { value, gauge } = quantity.value.value;
  if (gauge) assumed.add('A gauge pressure is counted from that of sea level, 101.325 kPa.');
  return value + (gauge ? SEA_LEVEL : 0);
}

function splitOnce(word: string): readonly [string, string?] {
  const at = word.indexOf('=');
  return at < 0 ? [word] : [word.slice(0, at), word.slice(at + 1)];
}
