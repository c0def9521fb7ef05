/** The value of a setting, as a site file or an instrument gives it: whether two are the same, and how it is shown. */
import type { AirTemperatureSource } from '../model/air-temperature-source.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import type { Quantity, QuantityRange } from '../quantity/quantity.ts';

type Amount = Pick<Quantity, 'dimension' | 'value'> & Partial<Pick<Quantity, 'gauge'>>;
type Range = Pick<QuantityRange, 'dimension' | 'low' | 'high'>;

export type SettingValue = string | number | Amount | Range | AirTemperatureSource;

/** Two spellings of one number differ by less than this part of it. */
const ROUNDING = 1e-9;

/** Undefined where one is against the air pressure and the other is not, so that they cannot be compared. */
export function sameSetting(one: SettingValue, other: SettingValue): boolean | undefined {
  if (typeof one !== 'object' || typeof other !== 'object') return one === other;
  if ('low' in one) return 'low' in other && isClose(one.low, other.low) && isClose(one.high, other.high);
  if ('value' in one && 'value' in other) {
    return (one.gauge ?? false) === (other.gauge ?? false) ? isClose(one.value, other.value) : undefined;
  }
  return 'kind' in one && 'kind' in other && sameSource(one, other);
}

function sameSource(one: AirTemperatureSource, other: AirTemperatureSource): boolean {
  if (one.kind === 'point' && other.kind === 'point') return one.tag === other.tag;
  if (one.kind === 'fixed' && other.kind === 'fixed') return isClose(one.temperature.value, other.temperature.value);
  return one.kind === other.kind;
}

function isClose(one: number, other: number): boolean {
  return Math.abs(one - other) <= ROUNDING * Math.max(1, Math.abs(one), Math.abs(other));
}

export function settingWords(value: SettingValue): string {
  if (typeof value !== 'object') return String(value);
  if ('low' in value) return showRange(value.low, value.high, value.dimension);
  if ('value' in value) return showQuantity(value.value, value.dimension);
  if (value.kind === 'fixed') return showQuantity(value.temperature.value, 'temperature');
  return value.kind === 'point' ? value.tag : value.kind;
}
