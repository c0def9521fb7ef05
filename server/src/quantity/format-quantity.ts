/** The one place that turns numbers into text, for messages, hovers, reports, JSON and text put into files. */
import { DIMENSIONS, type Dimension, YEAR_SECONDS } from './dimension.ts';

/** A number as it is shown, with its unit apart, for tables and JSON. */
export interface ShownNumber {
  readonly number: string;
  /** The value in the shown unit, not rounded. */
  readonly value: number;
  /** The unit as files spell it: `degC`, `mm2`. */
  readonly unit: string;
}

interface Display {
  readonly unit: string;
  /** canonical = shown × factor */
  readonly factor: number;
  readonly decimals: number;
}

const MINIMUM_SIGNIFICANT = 2;
/** What is smaller than the last decimal that is usually shown by so many more is shown as less than that. */
const NEGLIGIBLE_DECIMALS = 3;
const MANY_TIMES = 10;

/** Decimals that are usually shown, in the usual unit of the dimension. */
const DECIMALS: Readonly<Record<Exclude<Dimension, 'pressure' | 'length' | 'time'>, number>> = {
  temperature: 1,
  'temperature-difference': 1,
  'relative-humidity': 1,
  area: 2,
  speed: 2,
  voltage: 1,
  current: 2,
  resistance: 1,
  power: 2,
  'mixing-ratio': 1,
  'absolute-humidity': 1,
  'volume-fraction': 0,
  'specific-enthalpy': 1,
  'temperature-rate': 2,
  'temperature-gradient': 2,
  'humidity-drift': 2,
  'temperature-drift': 2,
  percentage: 1,
};

const TYPOGRAPHY: Readonly<Record<string, string>> = { degC: '°C', mm2: 'mm²', 'g/m3': 'g/m³', ohm: 'Ω' };

/** A value for a sentence: `56.4 °C`, `61.2 %RH`; `< 0.0001 K` where nobody asks how much it is. @param value canonical */
export function showQuantity(value: number, dimension: Dimension): string {
  const { unit, factor, decimals } = displayOf(Math.abs(value), dimension);
  const [shown, least] = [value / factor, 10 ** -(decimals + NEGLIGIBLE_DECIMALS)];
  const isNegligible = shown !== 0 && Math.abs(shown) < least;
  const number = isNegligible
    ? `${shown > 0 ? '< ' : '> -'}${formatNumber(least, decimals)}`
    : formatNumber(shown, decimals);
  return `${number} ${typeset(unit)}`;
}

/** A part of a whole, `62.6 %`; from ten wholes on how many there are, `12 ×`. @param share 1 is the whole */
export function showShare(share: number): string {
  return share < MANY_TIMES ? showQuantity(share, 'percentage') : `${formatNumber(share, 0)} ×`;
}

/**
 * A value with the half-width of its interval, `-1.70 ± 0.62 %RH`: the half-width with two significant digits, the value
 * to the same decimals (JCGM 100, 7.2.6). @param value canonical @param halfWidth canonical, 0 or more
 */
export function showEstimate(value: number, halfWidth: number, dimension: Dimension): string {
  const { unit, factor } = displayOf(Math.max(Math.abs(value), halfWidth), dimension);
  const magnitude = halfWidth > 0 ? Math.floor(Math.log10(halfWidth / factor)) : 0;
  const decimals = Math.min(12, Math.max(0, MINIMUM_SIGNIFICANT - 1 - magnitude));
  const [shown, width] = [value, halfWidth].map((number) =>
    (number / factor).toFixed(decimals).replace(/^-(0\.?0*)$/, '$1'),
  );
  return `${shown} ± ${width} ${typeset(unit)}`;
}

/** A value as a file spells it: `56.4 degC`. @param value canonical */
export function writeQuantity(value: number, dimension: Dimension): string {
  const { number, unit } = showNumber(value, dimension);
  return `${number} ${unit}`;
}

/** A range for a sentence, `35 … 88 %RH`. @param low canonical @param high canonical */
export function showRange(low: number, high: number, dimension: Dimension): string {
  const { from, to, unit } = rangeInOneUnit(low, high, dimension);
  return from === to ? `${from} ${typeset(unit)}` : `${from} … ${to} ${typeset(unit)}`;
}

/** A range as a file spells it, `35 .. 88 %RH`. @param low canonical @param high canonical */
export function writeRange(low: number, high: number, dimension: Dimension): string {
  const { from, to, unit } = rangeInOneUnit(low, high, dimension);
  return `${from} .. ${to} ${unit}`;
}

/** @param value canonical */
export function showNumber(value: number, dimension: Dimension): ShownNumber {
  const display = displayOf(Math.abs(value), dimension);
  const shown = value / display.factor;
  return { number: formatNumber(shown, display.decimals), value: shown, unit: display.unit };
}

/**
 * A plain number with at most so many decimals, more where fewer than two significant digits would be left,
 * without trailing zeros.
 */
export function formatNumber(value: number, decimals: number): string {
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const needed = Math.min(12, Math.max(decimals, MINIMUM_SIGNIFICANT - 1 - magnitude));
  const text = value.toFixed(needed);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

function typeset(unit: string): string {
  return TYPOGRAPHY[unit] ?? unit;
}

function rangeInOneUnit(low: number, high: number, dimension: Dimension) {
  const { unit, factor, decimals } = displayOf(Math.max(Math.abs(low), Math.abs(high)), dimension);
  return { from: formatNumber(low / factor, decimals), to: formatNumber(high / factor, decimals), unit };
}

function displayOf(size: number, dimension: Dimension): Display {
  if (dimension === 'pressure') return pressureDisplay(size);
  if (dimension === 'length')
    return size < 1 ? { unit: 'mm', factor: 1e-3, decimals: 1 } : { unit: 'm', factor: 1, decimals: 2 };
  if (dimension === 'time') return timeDisplay(size);
  const [usual] = DIMENSIONS[dimension].units;
  return { unit: usual.symbol, factor: usual.factor, decimals: DECIMALS[dimension] };
}

function pressureDisplay(size: number): Display {
  if (size < 1000) return { unit: 'Pa', factor: 1, decimals: 0 };
  return { unit: 'kPa', factor: 1000, decimals: size < 10_000 ? 3 : 2 };
}

function timeDisplay(size: number): Display {
  if (size < 600) return { unit: 's', factor: 1, decimals: 1 };
  if (size < 7200) return { unit: 'min', factor: 60, decimals: 1 };
  if (size < 2 * 86_400) return { unit: 'h', factor: 3600, decimals: 1 };
  if (size < 60 * 86_400) return { unit: 'd', factor: 86_400, decimals: 0 };
  return { unit: 'months', factor: YEAR_SECONDS / 12, decimals: 0 };
}
