/**
 * The state of moist air that everything else is computed from, and the ideal-mixture heat contents that enthalpy and
 * wet bulb share.
 */
import type { Formula } from '../formula.ts';

/**
 * One state of moist air. Three numbers fix it: the air temperature in °C, the total pressure in Pa, and the vapour
 * pressure in Pa, which is the mole fraction of vapour times the total pressure. A state made by `airState` is
 * possible: 0 ≤ vapour pressure < pressure, and not above saturation.
 */
export interface AirState {
  readonly airCelsius: number;
  readonly pressure: number;
  readonly vapourPressure: number;
}

/** The quantities that say how humid air is, by the names that site files give them. */
export type HumidityQuantity =
  | 'relative-humidity'
  | 'relative-humidity-ice'
  | 'dew-point'
  | 'frost-point'
  | 'vapour-pressure'
  | 'mixing-ratio'
  | 'specific-humidity'
  | 'volume-fraction'
  | 'absolute-humidity'
  | 'wet-bulb'
  | 'specific-enthalpy'
  | 'vapour-pressure-deficit'
  | 'dew-point-depression';

/** Specific heat of dry air in J/(kg·K): ASHRAE Fundamentals 2017 ch. 1, eq. 28. */
export const HEAT_OF_DRY_AIR = 1006;
/** Specific heat of water vapour in J/(kg·K): ASHRAE Fundamentals 2017 ch. 1, eq. 29. */
export const HEAT_OF_VAPOUR = 1860;
/** Enthalpy in J/kg of saturated vapour at 0 °C, over liquid water at 0 °C: ASHRAE Fundamentals 2017 ch. 1, eq. 29. */
export const ENTHALPY_OF_VAPOUR_AT_ZERO = 2.501e6;

/** h = 1006 t + W (2501000 + 1860 t), J per kg of dry air, t in degC */
export const IDEAL_MIXTURE_ENTHALPY: Formula = {
  id: 'ideal-mixture-enthalpy',
  title: 'Specific enthalpy of moist air, ideal mixture',
  source: 'ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30',
  validity: [],
};
