/** Any quantity of a state of air, by its name. */
import { type Outcome, succeed } from '../../base/outcome.ts';
import type { NoSuchPoint } from './dew-point.ts';
import type { AirState, HumidityQuantity } from './moist-air.ts';
import {
  absoluteHumidity,
  density,
  dewPoint,
  dewPointDepression,
  frostPoint,
  mixingRatio,
  type NoIceAtAirTemperature,
  relativeHumidity,
  relativeHumidityOverIce,
  specificEnthalpy,
  specificHumidity,
  vapourPressureDeficit,
  volumeFraction,
} from './quantities.ts';
import { wetBulb } from './wet-bulb.ts';

/** What a state of air has a value of. */
export type StateQuantity = HumidityQuantity | 'air-temperature' | 'density';

/** Why a state of air has no value of a quantity. */
export type NoSuchQuantity = NoSuchPoint | NoIceAtAirTemperature;

/** The value of a quantity in its SI unit (fractions, °C, Pa, kg/kg, kg/m³, J/kg; differences in K), or why there is none. */
export function quantityOf(state: AirState, quantity: StateQuantity): Outcome<number, NoSuchQuantity> {
  switch (quantity) {
    case 'relative-humidity':
      return succeed(relativeHumidity(state));
    case 'relative-humidity-ice':
      return relativeHumidityOverIce(state);
    case 'dew-point':
      return dewPoint(state);
    case 'dew-point-depression':
      return dewPointDepression(state);
    case 'frost-point':
      return frostPoint(state);
    case 'vapour-pressure':
      return succeed(state.vapourPressure);
    case 'vapour-pressure-deficit':
      return succeed(vapourPressureDeficit(state));
    case 'mixing-ratio':
      return succeed(mixingRatio(state));
    case 'specific-humidity':
      return succeed(specificHumidity(state));
    case 'volume-fraction':
      return succeed(volumeFraction(state));
    case 'absolute-humidity':
      return succeed(absoluteHumidity(state));
    case 'specific-enthalpy':
      return succeed(specificEnthalpy(state));
    case 'wet-bulb':
      return succeed(wetBulb(state).celsius);
    case 'air-temperature':
      return succeed(state.airCelsius);
    case 'density':
      return succeed(density(state));
  }
}
