/** Tells the state where an extreme was found as a corner that a person can read, and which formulas it leaves. */
import { valueIfOk } from '../../base/outcome.ts';
import { COLDEST_POINT_CELSIUS } from '../../physics/air/dew-point.ts';
import { enhancementLeavesFormula } from '../../physics/air/enhancement.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { dewPoint, relativeHumidity } from '../../physics/air/quantities.ts';
import { SATURATION_OVER_WATER, saturationFormulaOverWater } from '../../physics/air/saturation.ts';
import type { Formula, OutsideFormula } from '../../physics/formula.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { formulaLeftBySaturation, type QuantityName } from '../../quantity/quantities.ts';
import type { Corner } from './fact.ts';

export function cornerOf(state: AirState, phase: string | undefined, speed?: number): Corner {
  return {
    phase,
    airCelsius: state.airCelsius,
    relativeHumidity: relativeHumidity(state),
    dewPointCelsius: valueIfOk(dewPoint(state)) ?? COLDEST_POINT_CELSIUS,
    pressure: state.pressure,
    speed,
  };
}

/** The formulas of a quantity at a dew point in °C: below the triple point that over supercooled water stands beside. */
export function formulasAt(formulas: readonly Formula[], dewPointCelsius: number): readonly Formula[] {
  const overWater = saturationFormulaOverWater(dewPointCelsius);
  const asGiven = overWater === SATURATION_OVER_WATER || !formulas.includes(SATURATION_OVER_WATER);
  return asGiven ? formulas : [...formulas, overWater];
}

/** Which formula's published range a state leaves, or undefined. */
export function formulaLeftBy(state: AirState): OutsideFormula | undefined {
  return enhancementLeavesFormula(state.airCelsius, state.pressure, 'water');
}

/**
 * Which formula's published range the computation of a quantity leaves at a state, or undefined.
 * @param otherPressure for `dew-point-at`: the pressure in Pa that the gas is brought to
 */
export function formulaLeftByQuantity(
  name: QuantityName,
  state: AirState,
  otherPressure?: number,
): OutsideFormula | undefined {
  return formulaLeftBy(state) ?? formulaLeftBySaturation(name, state, otherPressure);
}

const DIMENSION_OF_UNIT: Readonly<Record<string, Dimension>> = { degC: 'temperature', Pa: 'pressure' };

/** One sentence without its stop: which formula is left, by which value, and its published range. */
export function wordsOfOutside({ formula, argument, value }: OutsideFormula): string {
  const range = formula.validity.find((candidate) => candidate.argument === argument);
  const dimension = DIMENSION_OF_UNIT[range?.unit ?? ''];
  if (range === undefined || dimension === undefined)
    return `“${formula.title}” is not defined at or above the boiling point`;
  const show = (number: number): string => showQuantity(number, dimension);
  return `${show(value)} lies outside the ${show(range.low)} to ${show(range.high)} that “${formula.title}” is published for`;
}
