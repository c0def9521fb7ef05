/** The quantities of humid air that a point can report: what each is, its unit, and what it depends on. */
import type { Dimension } from './dimension.ts';

export type QuantityName = keyof typeof TABLE;

export interface QuantityInfo {
  readonly title: string;
  readonly dimension: Dimension;
  /** The dimension of a difference of two such values: tolerances and uncertainties. */
  readonly difference: Dimension;
  readonly needsAirTemperature: boolean;
  readonly needsPressure: boolean;
  readonly about: string;
}

function info(
  title: string,
  dimension: Dimension,
  difference: Dimension,
  needs: { readonly airTemperature?: true; readonly pressure?: true },
  about: string,
): QuantityInfo {
  return {
    title,
    dimension,
    difference,
    needsAirTemperature: needs.airTemperature === true,
    needsPressure: needs.pressure === true,
    about,
  };
}

const TABLE = {
  'relative-humidity': info(
    'relative humidity',
    'relative-humidity',
    'relative-humidity',
    { airTemperature: true },
    'Vapour pressure over its saturation value over water at the air temperature, also below 0 °C (WMO convention).',
  ),
  'relative-humidity-ice': info(
    'relative humidity over ice',
    'relative-humidity',
    'relative-humidity',
    { airTemperature: true },
    'Vapour pressure over its saturation value over ice at the air temperature.',
  ),
  'air-temperature': info(
    'air temperature',
    'temperature',
    'temperature-difference',
    { airTemperature: true },
    'Temperature of the air of the process.',
  ),
  'dew-point': info(
    'dew point',
    'temperature',
    'temperature-difference',
    {},
    'Temperature at which the air would be saturated over water, cooled at constant pressure; below 0 °C over supercooled water.',
  ),
  'frost-point': info(
    'frost point',
    'temperature',
    'temperature-difference',
    {},
    'Temperature at which the air would be saturated over ice, cooled at constant pressure.',
  ),
  'dew-point-at': info(
    'dew point at another pressure',
    'temperature',
    'temperature-difference',
    { pressure: true },
    'Dew point after the gas has been brought to another stated pressure.',
  ),
  'vapour-pressure': info(
    'vapour pressure',
    'pressure',
    'pressure',
    {},
    'Partial pressure of the water vapour in the air.',
  ),
  'mixing-ratio': info(
    'mixing ratio',
    'mixing-ratio',
    'mixing-ratio',
    { pressure: true },
    'Mass of water vapour per mass of dry air.',
  ),
  'specific-humidity': info(
    'specific humidity',
    'mixing-ratio',
    'mixing-ratio',
    { pressure: true },
    'Mass of water vapour per mass of moist air.',
  ),
  'volume-fraction': info(
    'volume fraction',
    'volume-fraction',
    'volume-fraction',
    { pressure: true },
    'Partial pressure of the water vapour over the total pressure.',
  ),
  'absolute-humidity': info(
    'absolute humidity',
    'absolute-humidity',
    'absolute-humidity',
    { airTemperature: true },
    'Mass of water vapour per volume of moist air.',
  ),
  'wet-bulb': info(
    'wet-bulb temperature',
    'temperature',
    'temperature-difference',
    { airTemperature: true, pressure: true },
    'Thermodynamic wet-bulb temperature: where adiabatic evaporation of water saturates the air.',
  ),
  'specific-enthalpy': info(
    'specific enthalpy',
    'specific-enthalpy',
    'specific-enthalpy',
    { airTemperature: true, pressure: true },
    'Enthalpy of the moist air per mass of dry air, from 0 °C dry air and liquid water.',
  ),
  'vapour-pressure-deficit': info(
    'vapour pressure deficit',
    'pressure',
    'pressure',
    { airTemperature: true },
    'Saturation vapour pressure at the air temperature less the vapour pressure.',
  ),
  'dew-point-depression': info(
    'dew-point depression',
    'temperature-difference',
    'temperature-difference',
    { airTemperature: true },
    'Air temperature less the dew point.',
  ),
} as const satisfies Record<string, QuantityInfo>;

export const QUANTITY_NAMES = Object.keys(TABLE) as readonly QuantityName[];

export function quantityInfo(name: QuantityName): QuantityInfo {
  return TABLE[name];
}

export function isQuantityName(text: string): text is QuantityName {
  return Object.hasOwn(TABLE, text);
}
