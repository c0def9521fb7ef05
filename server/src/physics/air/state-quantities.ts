/** The quantities of a state of air by their names: what each is, how it changes, and which air has a value of it. */
import { type Outcome, succeed } from '../../base/outcome.ts';
import type { NoSuchPoint } from './dew-point.ts';
import {
  amount,
  fromDewPoint,
  fromFrostPoint,
  fromMixingRatio,
  fromRelativeHumidityOverIce,
  fromVapourPressureDeficit,
  fromWetBulb,
} from './known-humidity.ts';
import type { AirState, HumidityQuantity } from './moist-air.ts';
import {
  type Partials,
  partialsOfAbsoluteHumidity,
  partialsOfDensity,
  partialsOfDewPoint,
  partialsOfDewPointDepression,
  partialsOfFrostPoint,
  partialsOfMixingRatio,
  partialsOfRelativeHumidity,
  partialsOfRelativeHumidityOverIce,
  partialsOfSpecificEnthalpy,
  partialsOfSpecificHumidity,
  partialsOfVapourPressureDeficit,
  partialsOfVolumeFraction,
} from './partials.ts';
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
import type { StateProblem } from './state-problem.ts';
import {
  mixingRatioFromSpecificEnthalpy,
  vapourPressureFromAbsoluteHumidity,
  vapourPressureFromRelativeHumidity,
  vapourPressureFromSpecificHumidity,
  vapourPressureFromVolumeFraction,
} from './vapour-pressure.ts';
import { wetBulb, wetBulbPartials } from './wet-bulb.ts';

/** What a state of air has a value of. */
export type StateQuantity = HumidityQuantity | 'air-temperature' | 'density';

/** Why a state of air has no value of a quantity. */
export type NoSuchQuantity = NoSuchPoint | NoIceAtAirTemperature;

/** One humidity quantity and its value in SI units: fractions, °C, Pa, kg/kg, kg/m³, J/kg; differences in K. */
export interface KnownHumidity {
  readonly quantity: HumidityQuantity;
  readonly value: number;
}

interface Physics {
  /** In its SI unit: fractions, °C, Pa, kg/kg, kg/m³, J/kg; differences in K. */
  readonly valueOf: (state: AirState) => Outcome<number, NoSuchQuantity>;
  readonly partialsOf: (state: AirState) => Outcome<Partials, NoSuchQuantity>;
}

interface HumidityPhysics extends Physics {
  /** Pa, of air at a temperature in °C and a pressure in Pa. */
  readonly vapourPressureFrom: (value: number, airCelsius: number, pressure: number) => Outcome<number, StateProblem>;
}

/** Quantities that every state has. */
function always(value: (state: AirState) => number, partials: (state: AirState) => Partials): Physics {
  return { valueOf: (state) => succeed(value(state)), partialsOf: (state) => succeed(partials(state)) };
}

const HUMIDITIES: Readonly<Record<HumidityQuantity, HumidityPhysics>> = {
  'relative-humidity': {
    ...always(relativeHumidity, (state) => partialsOfRelativeHumidity(state, 'water')),
    vapourPressureFrom: (value, airCelsius, pressure) =>
      amount('relative-humidity', value, vapourPressureFromRelativeHumidity(value, airCelsius, pressure)),
  },
  'relative-humidity-ice': {
    valueOf: relativeHumidityOverIce,
    partialsOf: partialsOfRelativeHumidityOverIce,
    vapourPressureFrom: fromRelativeHumidityOverIce,
  },
  'dew-point': {
    valueOf: dewPoint,
    partialsOf: partialsOfDewPoint,
    vapourPressureFrom: (value, _, pressure) => fromDewPoint(value, pressure),
  },
  'dew-point-depression': {
    valueOf: dewPointDepression,
    partialsOf: partialsOfDewPointDepression,
    vapourPressureFrom: (value, airCelsius, pressure) => fromDewPoint(airCelsius - value, pressure),
  },
  'frost-point': {
    valueOf: frostPoint,
    partialsOf: partialsOfFrostPoint,
    vapourPressureFrom: (value, _, pressure) => fromFrostPoint(value, pressure),
  },
  'vapour-pressure': {
    ...always(
      ({ vapourPressure }) => vapourPressure,
      () => ({ vapourPressure: 1, airCelsius: 0, pressure: 0 }),
    ),
    vapourPressureFrom: (value) => amount('vapour-pressure', value, value),
  },
  'vapour-pressure-deficit': {
    ...always(vapourPressureDeficit, partialsOfVapourPressureDeficit),
    vapourPressureFrom: fromVapourPressureDeficit,
  },
  'mixing-ratio': {
    ...always(mixingRatio, partialsOfMixingRatio),
    vapourPressureFrom: (value, _, pressure) => fromMixingRatio(value, pressure),
  },
  'specific-humidity': {
    ...always(specificHumidity, partialsOfSpecificHumidity),
    vapourPressureFrom: (value, _, pressure) =>
      amount('specific-humidity', value, vapourPressureFromSpecificHumidity(value, pressure)),
  },
  'volume-fraction': {
    ...always(volumeFraction, partialsOfVolumeFraction),
    vapourPressureFrom: (value, _, pressure) =>
      amount('volume-fraction', value, vapourPressureFromVolumeFraction(value, pressure)),
  },
  'absolute-humidity': {
    ...always(absoluteHumidity, partialsOfAbsoluteHumidity),
    vapourPressureFrom: (value, airCelsius) =>
      amount('absolute-humidity', value, vapourPressureFromAbsoluteHumidity(value, airCelsius)),
  },
  'specific-enthalpy': {
    ...always(specificEnthalpy, partialsOfSpecificEnthalpy),
    vapourPressureFrom: (value, airCelsius, pressure) =>
      fromMixingRatio(mixingRatioFromSpecificEnthalpy(value, airCelsius), pressure),
  },
  'wet-bulb': {
    ...always(
      (state) => wetBulb(state).celsius,
      (state) => wetBulbPartials(state, wetBulb(state)),
    ),
    vapourPressureFrom: fromWetBulb,
  },
};

const QUANTITIES: Readonly<Record<StateQuantity, Physics>> = {
  ...HUMIDITIES,
  'air-temperature': always(
    ({ airCelsius }) => airCelsius,
    () => ({ vapourPressure: 0, airCelsius: 1, pressure: 0 }),
  ),
  density: always(density, partialsOfDensity),
};

export const HUMIDITY_QUANTITIES = Object.keys(HUMIDITIES) as readonly HumidityQuantity[];

/** The value of a quantity in its SI unit (fractions, °C, Pa, kg/kg, kg/m³, J/kg; differences in K), or why there is none. */
export function quantityOf(state: AirState, quantity: StateQuantity): Outcome<number, NoSuchQuantity> {
  return QUANTITIES[quantity].valueOf(state);
}

/** Exact partial derivatives of a quantity at a state of air, or why it has no value there. */
export function partialsOf(state: AirState, quantity: StateQuantity): Outcome<Partials, NoSuchQuantity> {
  return QUANTITIES[quantity].partialsOf(state);
}

/**
 * Vapour pressure in Pa of air at a temperature in °C and a pressure in Pa, from one known humidity. Checks that the
 * humidity is inside its formulas and no negative amount; whether such air is possible is for `airState` to say.
 */
export function vapourPressureOf(
  { quantity, value }: KnownHumidity,
  airCelsius: number,
  pressure: number,
): Outcome<number, StateProblem> {
  return HUMIDITIES[quantity].vapourPressureFrom(value, airCelsius, pressure);
}
