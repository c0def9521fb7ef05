/** Thermodynamic wet bulb: the temperature at which water, or ice, evaporating into the air saturates it adiabatically. */
import { MOLAR_MASS_RATIO } from '../constants.ts';
import type { Formula } from '../formula.ts';
import { risingRoot } from '../mathematics/newton.ts';
import { type AirState, ENTHALPY_OF_VAPOUR_AT_ZERO, HEAT_OF_DRY_AIR, HEAT_OF_VAPOUR } from './moist-air.ts';
import { saturatedVapour } from './saturated-vapour.ts';
import type { WaterPhase } from './saturation.ts';

/** h(t, W) + (Ws* − W)·hw* = h(t*, Ws*); hw* = 4186 t* over water, 2100 t* − 329000 over ice, J/kg, t in degC */
export const WET_BULB: Formula = {
  id: 'thermodynamic-wet-bulb',
  title: 'Thermodynamic wet bulb, adiabatic saturation',
  source: 'ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33 and 35',
  validity: [],
};

/** A wet bulb in °C and the phase on the wick. */
export interface WetBulb {
  readonly celsius: number;
  readonly phase: WaterPhase;
}

/** How a wet bulb changes per Pa of vapour pressure, per K of air temperature and per Pa of total pressure. */
export interface WetBulbPartials {
  readonly vapourPressure: number;
  readonly airCelsius: number;
  readonly pressure: number;
}

/** Enthalpy of the condensed phase in J/kg, over liquid water at 0 °C, linear in °C: the terms of ASHRAE eq. 33 and 35. */
const CONDENSED: Readonly<Record<WaterPhase, { readonly atZero: number; readonly perCelsius: number }>> = {
  water: { atZero: 0, perCelsius: 4186 },
  ice: { atZero: -0.329e6, perCelsius: 2100 },
};

/** The phase that a wick is taken to carry at a wet bulb in °C: ice below 0 °C. */
export function wetBulbPhase(wetBulbCelsius: number): WaterPhase {
  return wetBulbCelsius < 0 ? 'ice' : 'water';
}

/**
 * Thermodynamic wet bulb in °C of a state of air, with the phase it holds for: over water where that lies at or above
 * 0 °C, otherwise over ice. In air above freezing an iced wick stands up to about 1 K lower than a wet one, so just
 * below 0 °C there is a band of wet bulbs that this choice never gives; {@link wetBulbOver} gives them.
 * ASHRAE Fundamentals 2017 ch. 1 eq. 33 and 35, with the enhancement factor in Ws*; solved to 1e-9 K.
 * Worked value: 25 °C, 50 %RH and 101325 Pa give 17.88 °C over water.
 */
export function wetBulb(state: AirState): WetBulb {
  const overWater = wetBulbOver(state, 'water');
  return overWater >= 0 ? { celsius: overWater, phase: 'water' } : { celsius: wetBulbOver(state, 'ice'), phase: 'ice' };
}

/**
 * Thermodynamic wet bulb in °C of a state of air with the phase on the wick given; see {@link wetBulb}.
 * Worked value: 5 °C, 20 %RH and 101325 Pa give −1.04 °C over water, −1.42 °C over ice.
 */
export function wetBulbOver(state: AirState, phase: WaterPhase): number {
  const tangentAt = (celsius: number) => {
    const { value, perWetBulb } = heatBalance(state, celsius, phase);
    return { value, slope: perWetBulb };
  };
  // Air supersaturated over ice warms an iced wick, so that its wet bulb may lie a little above the air temperature.
  const highest = phase === 'water' ? state.airCelsius : Math.max(state.airCelsius, 1);
  return risingRoot(tangentAt, LOWEST_CELSIUS, highest, state.airCelsius, SMALLEST_STEP);
}

/**
 * Mixing ratio in kg/kg of air at a temperature in °C and a pressure in Pa whose wet bulb in °C is known: ASHRAE
 * Fundamentals 2017 ch. 1 eq. 33 over water, eq. 35 over ice. Negative where the wet bulb is lower than dry air could
 * have; the saturation vapour pressure at the wet bulb must be below the pressure.
 * Worked value: 30 °C, wet bulb 25 °C over water, 95461 Pa give 0.01932 kg/kg.
 */
export function mixingRatioFromWetBulb(bulb: WetBulb, airCelsius: number, pressure: number): number {
  const saturated = saturatedVapour(bulb.celsius, pressure, bulb.phase).vapourPressure;
  const saturatedRatio = (MOLAR_MASS_RATIO * saturated) / (pressure - saturated);
  const condensed = condensedEnthalpy(bulb.celsius, bulb.phase);
  const evaporationAtBulb = vapourEnthalpy(bulb.celsius) - condensed;
  const evaporationIntoAir = vapourEnthalpy(airCelsius) - condensed;
  return (saturatedRatio * evaporationAtBulb - HEAT_OF_DRY_AIR * (airCelsius - bulb.celsius)) / evaporationIntoAir;
}

/**
 * Exact partial derivatives of the wet bulb of a state, over the phase given, by implicit differentiation.
 * Worked value: 25 °C, 50 %RH and 101325 Pa give 0.00513 K/Pa of vapour pressure and 0.335 K per K of air temperature.
 */
export function wetBulbPartials(state: AirState, bulb: WetBulb): WetBulbPartials {
  const { perWetBulb, perVapourPressure, perAirCelsius, perPressure } = heatBalance(state, bulb.celsius, bulb.phase);
  return {
    vapourPressure: -perVapourPressure / perWetBulb,
    airCelsius: -perAirCelsius / perWetBulb,
    pressure: -perPressure / perWetBulb,
  };
}

/** Below any wet bulb of air that a state can describe. */
const LOWEST_CELSIUS = -150;
/** Newton converges quadratically: the error left is far below the last step. */
const SMALLEST_STEP = 1e-7;

interface HeatBalance {
  readonly value: number;
  readonly perWetBulb: number;
  readonly perVapourPressure: number;
  readonly perAirCelsius: number;
  readonly perPressure: number;
}

/**
 * The adiabatic balance at a trial wet bulb, rising through zero at the true one. With the mole fractions x = e/p and
 * y = e*(t*)/p in place of the mixing ratios, and both sides multiplied by (1 − x)(1 − y), it has no pole where the
 * trial is above the boiling point.
 */
function heatBalance(state: AirState, trialCelsius: number, phase: WaterPhase): HeatBalance {
  const { airCelsius, pressure, vapourPressure } = state;
  const saturated = saturatedVapour(trialCelsius, pressure, phase);
  const x = vapourPressure / pressure;
  const y = saturated.vapourPressure / pressure;
  const condensedHeat = CONDENSED[phase].perCelsius;
  const condensed = condensedEnthalpy(trialCelsius, phase);
  const evaporationAtBulb = vapourEnthalpy(trialCelsius) - condensed;
  const evaporationIntoAir = vapourEnthalpy(airCelsius) - condensed;
  const airHeat = HEAT_OF_DRY_AIR * (airCelsius - trialCelsius);

  const perX = -MOLAR_MASS_RATIO * (y * evaporationAtBulb + (1 - y) * evaporationIntoAir) + airHeat * (1 - y);
  const perY = (1 - x) * (MOLAR_MASS_RATIO * evaporationAtBulb + airHeat) + MOLAR_MASS_RATIO * x * evaporationIntoAir;
  const perTrialAlone =
    (1 - x) * (MOLAR_MASS_RATIO * y * (HEAT_OF_VAPOUR - condensedHeat) + HEAT_OF_DRY_AIR * (1 - y)) +
    MOLAR_MASS_RATIO * x * (1 - y) * condensedHeat;
  return {
    value:
      MOLAR_MASS_RATIO * (y * (1 - x) * evaporationAtBulb - x * (1 - y) * evaporationIntoAir) -
      (1 - x) * (1 - y) * airHeat,
    perWetBulb: perTrialAlone + (perY * saturated.perCelsius) / pressure,
    perVapourPressure: perX / pressure,
    perAirCelsius: -(1 - y) * ((1 - x) * HEAT_OF_DRY_AIR + MOLAR_MASS_RATIO * x * HEAT_OF_VAPOUR),
    perPressure: (-perX * x + perY * (saturated.perPressure - y)) / pressure,
  };
}

function vapourEnthalpy(celsius: number): number {
  return ENTHALPY_OF_VAPOUR_AT_ZERO + HEAT_OF_VAPOUR * celsius;
}

function condensedEnthalpy(celsius: number, phase: WaterPhase): number {
  const { atZero, perCelsius } = CONDENSED[phase];
  return atZero + perCelsius * celsius;
}
