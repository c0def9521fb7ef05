/**
 * The quantities of humid air that a point can report, one record each: what it is, its unit, what it depends on, and
 * what it rests on. Schemas, pages, completion, `calc`, formats and derivations follow from these records.
 */
import { valueIfOk } from '../base/outcome.ts';
import { ENHANCEMENT_OVER_ICE, ENHANCEMENT_OVER_WATER, enhancementLeavesFormula } from '../physics/air/enhancement.ts';
import { type AirState, IDEAL_MIXTURE_ENTHALPY } from '../physics/air/moist-air.ts';
import { dewPoint, dewPointAt, frostPoint } from '../physics/air/quantities.ts';
import { SATURATION_OVER_ICE, SATURATION_OVER_WATER, type WaterPhase } from '../physics/air/saturation.ts';
import { WET_BULB } from '../physics/air/wet-bulb.ts';
import type { Formula, OutsideFormula } from '../physics/formula.ts';
import type { Dimension } from './dimension.ts';

export type QuantityName = keyof typeof QUANTITIES;

export interface QuantityInfo {
  readonly title: string;
  readonly dimension: Dimension;
  /** The dimension of a difference of two such values: tolerances and uncertainties. */
  readonly difference: Dimension;
  /** The unit of tables, whatever the size of the number. */
  readonly unit: string;
  readonly needsAirTemperature: boolean;
  readonly needsPressure: boolean;
  readonly about: string;
  /** With e the vapour pressure, p the pressure, t the air temperature, f the enhancement factor, ε = Mv/Ma = 0.62196. */
  readonly relation: string;
  readonly formulas: readonly Formula[];
  /** Where the air is saturated to find it, besides the air temperature itself. */
  readonly saturated?: Saturated;
}

interface Saturated {
  readonly over: WaterPhase;
  /** °C and Pa; undefined where the air has no such point. @param otherPressure Pa, where the gas is brought to one */
  readonly at: (state: AirState, otherPressure?: number) => readonly [celsius: number, pressure: number] | undefined;
}

type Declared = Omit<QuantityInfo, 'needsAirTemperature' | 'needsPressure'> & {
  readonly needs?: readonly ('air temperature' | 'pressure')[];
};

function quantity({ needs = [], ...info }: Declared): QuantityInfo {
  return {
    ...info,
    needsAirTemperature: needs.includes('air temperature'),
    needsPressure: needs.includes('pressure'),
  };
}

const TEMPERATURE = { dimension: 'temperature', difference: 'temperature-difference', unit: 'degC' } as const;
const OVER_WATER = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
const OVER_ICE = [SATURATION_OVER_ICE, ENHANCEMENT_OVER_ICE];

const AT_DEW_POINT: Saturated = {
  over: 'water',
  at: (state) => {
    const celsius = valueIfOk(dewPoint(state));
    return celsius === undefined ? undefined : [celsius, state.pressure];
  },
};

const QUANTITIES = {
  'relative-humidity': quantity({
    title: 'relative humidity',
    dimension: 'relative-humidity',
    difference: 'relative-humidity',
    unit: '%RH',
    needs: ['air temperature'],
    about:
      'Vapour pressure over its saturation value over water at the air temperature, also below 0 °C (WMO convention).',
    relation: 'RH = e / (f(t, p) · ew(t))',
    formulas: OVER_WATER,
  }),
  'relative-humidity-ice': quantity({
    title: 'relative humidity over ice',
    dimension: 'relative-humidity',
    difference: 'relative-humidity',
    unit: '%RH',
    needs: ['air temperature'],
    about: 'Vapour pressure over its saturation value over ice at the air temperature.',
    relation: 'RHi = e / (f(t, p) · ei(t))',
    formulas: OVER_ICE,
    saturated: { over: 'ice', at: ({ airCelsius, pressure }) => [airCelsius, pressure] },
  }),
  'air-temperature': quantity({
    title: 'air temperature',
    ...TEMPERATURE,
    needs: ['air temperature'],
    about: 'Temperature of the air of the process.',
    relation: 't, as the envelope gives it',
    formulas: [],
  }),
  'dew-point': quantity({
    title: 'dew point',
    ...TEMPERATURE,
    about:
      'Temperature at which the air would be saturated over water, cooled at constant pressure; below 0 °C over supercooled water.',
    relation: 'f(td, p) · ew(td) = e, solved for td',
    formulas: OVER_WATER,
    saturated: AT_DEW_POINT,
  }),
  'frost-point': quantity({
    title: 'frost point',
    ...TEMPERATURE,
    about: 'Temperature at which the air would be saturated over ice, cooled at constant pressure.',
    relation: 'f(tf, p) · ei(tf) = e, solved for tf',
    formulas: OVER_ICE,
    saturated: {
      over: 'ice',
      at: (state) => {
        const celsius = valueIfOk(frostPoint(state));
        return celsius === undefined ? undefined : [celsius, state.pressure];
      },
    },
  }),
  'dew-point-at': quantity({
    title: 'dew point at another pressure',
    ...TEMPERATURE,
    needs: ['pressure'],
    about: 'Dew point after the gas has been brought to another stated pressure.',
    relation: 'f(td, p2) · ew(td) = e · p2 / p, solved for td',
    formulas: OVER_WATER,
    saturated: {
      over: 'water',
      at: (state, otherPressure) => {
        const celsius = otherPressure === undefined ? undefined : valueIfOk(dewPointAt(state, otherPressure));
        return celsius === undefined || otherPressure === undefined ? undefined : [celsius, otherPressure];
      },
    },
  }),
  'vapour-pressure': quantity({
    title: 'vapour pressure',
    dimension: 'pressure',
    difference: 'pressure',
    unit: 'Pa',
    about: 'Partial pressure of the water vapour in the air.',
    relation: 'e = RH · f(t, p) · ew(t)',
    formulas: OVER_WATER,
  }),
  'mixing-ratio': quantity({
    title: 'mixing ratio',
    dimension: 'mixing-ratio',
    difference: 'mixing-ratio',
    unit: 'g/kg',
    needs: ['pressure'],
    about: 'Mass of water vapour per mass of dry air.',
    relation: 'w = ε · e / (p − e)',
    formulas: OVER_WATER,
  }),
  'specific-humidity': quantity({
    title: 'specific humidity',
    dimension: 'mixing-ratio',
    difference: 'mixing-ratio',
    unit: 'g/kg',
    needs: ['pressure'],
    about: 'Mass of water vapour per mass of moist air.',
    relation: 'q = ε · e / (p − (1 − ε) · e)',
    formulas: OVER_WATER,
  }),
  'volume-fraction': quantity({
    title: 'volume fraction',
    dimension: 'volume-fraction',
    difference: 'volume-fraction',
    unit: 'ppmv',
    needs: ['pressure'],
    about: 'Partial pressure of the water vapour over the total pressure.',
    relation: 'x = e / p',
    formulas: OVER_WATER,
  }),
  'absolute-humidity': quantity({
    title: 'absolute humidity',
    dimension: 'absolute-humidity',
    difference: 'absolute-humidity',
    unit: 'g/m3',
    needs: ['air temperature'],
    about: 'Mass of water vapour per volume of moist air.',
    relation: 'ρv = e / (Rv · T)',
    formulas: OVER_WATER,
  }),
  'wet-bulb': quantity({
    title: 'wet-bulb temperature',
    ...TEMPERATURE,
    needs: ['air temperature', 'pressure'],
    about: 'Thermodynamic wet-bulb temperature: where adiabatic evaporation of water saturates the air.',
    relation: 'adiabatic saturation, solved for the wet-bulb temperature',
    formulas: [WET_BULB, ...OVER_WATER],
  }),
  'specific-enthalpy': quantity({
    title: 'specific enthalpy',
    dimension: 'specific-enthalpy',
    difference: 'specific-enthalpy',
    unit: 'kJ/kg',
    needs: ['air temperature', 'pressure'],
    about: 'Enthalpy of the moist air per mass of dry air, from 0 °C dry air and liquid water.',
    relation: 'h = cpa · t + w · (h0 + cpv · t)',
    formulas: [IDEAL_MIXTURE_ENTHALPY, ...OVER_WATER],
  }),
  'vapour-pressure-deficit': quantity({
    title: 'vapour pressure deficit',
    dimension: 'pressure',
    difference: 'pressure',
    unit: 'Pa',
    needs: ['air temperature'],
    about: 'Saturation vapour pressure at the air temperature less the vapour pressure.',
    relation: 'f(t, p) · ew(t) − e',
    formulas: OVER_WATER,
  }),
  'dew-point-depression': quantity({
    title: 'dew-point depression',
    dimension: 'temperature-difference',
    difference: 'temperature-difference',
    unit: 'K',
    needs: ['air temperature'],
    about: 'Air temperature less the dew point.',
    relation: 't − td',
    formulas: OVER_WATER,
    saturated: AT_DEW_POINT,
  }),
} as const satisfies Record<string, QuantityInfo>;

export const QUANTITY_NAMES = Object.keys(QUANTITIES) as readonly QuantityName[];

export function quantityInfo(name: QuantityName): QuantityInfo {
  return QUANTITIES[name];
}

export function isQuantityName(text: string): text is QuantityName {
  return Object.hasOwn(QUANTITIES, text);
}

/**
 * Which formula's published range the saturation behind a quantity leaves at a state, or undefined.
 * @param otherPressure Pa, where the gas is brought to one
 */
export function formulaLeftBySaturation(
  name: QuantityName,
  state: AirState,
  otherPressure?: number,
): OutsideFormula | undefined {
  const { saturated } = quantityInfo(name);
  const point = saturated?.at(state, otherPressure);
  if (saturated === undefined || point === undefined) return undefined;
  const [celsius, pressure] = point;
  return enhancementLeavesFormula(celsius, pressure, saturated.over);
}

/** What schemas say of a quantity, for every editor: what it is, and what has to be given for it. */
export function descriptionOf(name: QuantityName): string {
  const { about, needsAirTemperature, needsPressure } = quantityInfo(name);
  if (name === 'air-temperature') return about;
  const given = [
    ...(needsAirTemperature ? ['the air temperature'] : []),
    ...(needsPressure ? ['the process pressure'] : []),
  ];
  return given.length === 0 ? `${about} Does not need the air temperature.` : `${about} Needs ${given.join(' and ')}.`;
}
