/** One state of moist air from two inputs and a pressure, with every quantity that follows: the calculator. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { NoSuchPoint } from '../../physics/air/dew-point.ts';
import type { AirState, HumidityQuantity } from '../../physics/air/moist-air.ts';
import { airState, airStateFromRelativeHumidityAndDewPoint } from '../../physics/air/state.ts';
import type { StateProblem } from '../../physics/air/state-problem.ts';
import type { Formula } from '../../physics/formula.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { QUANTITY_NAMES, type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { cornerOf, formulaLeftByQuantity, formulasAt, wordsOfOutside } from '../facts/corner.ts';
import { derivationOf, quantityValue } from '../facts/quantity-value.ts';

export type KnownQuantities = ReadonlyMap<QuantityName, number>;

export interface MoistAirState {
  readonly pressure: number;
  /** Every quantity that the state has, canonical. */
  readonly quantities: ReadonlyMap<QuantityName, number>;
  readonly formulas: readonly Formula[];
  readonly notes: readonly string[];
}

/**
 * @param known two quantities, canonical: the air temperature and a humidity, or relative humidity and dew point
 * @param pressure in Pa
 * @param otherPressure in Pa, for `dew-point-at`
 * @returns the state, or one sentence that says why there is none
 */
export function stateOfKnown(
  known: KnownQuantities,
  pressure: number,
  otherPressure: number | undefined,
): Outcome<MoistAirState, string> {
  if (known.size !== 2) return fail(`Two quantities determine the air besides the pressure; given: ${known.size}.`);
  const state = airOf(known, pressure);
  if (!state.ok) return state;
  const quantities = new Map<QuantityName, number>();
  for (const name of QUANTITY_NAMES) {
    const value = quantityValue(name, state.value, otherPressure);
    if (value.ok) quantities.set(name, value.value);
  }
  const formulas = new Set([...quantities.keys()].flatMap((name) => derivationOf(name).formulas));
  const outside = [...quantities.keys()].flatMap((name) => {
    const left = formulaLeftByQuantity(name, state.value, otherPressure);
    return left === undefined ? [] : [`${wordsOfOutside(left)}.`];
  });
  return succeed({
    pressure,
    quantities,
    formulas: formulasAt([...formulas], cornerOf(state.value, undefined).dewPointCelsius),
    notes: [...new Set(outside)],
  });
}

function airOf(known: KnownQuantities, pressure: number): Outcome<AirState, string> {
  const celsius = known.get('air-temperature');
  if (celsius !== undefined) {
    const [name, value] = [...known].find(([candidate]) => candidate !== 'air-temperature') ?? [];
    if (name === undefined || value === undefined || !isHumidity(name)) return fail(notDetermined(known));
    const state = airState(celsius, pressure, { quantity: name, value });
    return state.ok ? state : fail(wordsOfProblem(state.problem));
  }
  const humidity = known.get('relative-humidity');
  const dewPoint = known.get('dew-point');
  if (humidity === undefined || dewPoint === undefined) return fail(notDetermined(known));
  const state = airStateFromRelativeHumidityAndDewPoint(humidity, dewPoint, pressure);
  return state.ok ? state : fail(wordsOfProblem(state.problem));
}

function isHumidity(name: QuantityName): name is HumidityQuantity & QuantityName {
  return name !== 'air-temperature' && name !== 'dew-point-at';
}

function notDetermined(known: KnownQuantities): string {
  const names = [...known.keys()].join(' and ');
  return `${names} do not determine the air; give air-temperature and one humidity, or relative-humidity and dew-point.`;
}

/** One sentence for a state of air that cannot exist or cannot be computed. */
function wordsOfProblem(problem: StateProblem | NoSuchPoint): string {
  const celsius = (value: number): string => showQuantity(value, 'temperature');
  const pascal = (value: number): string => showQuantity(value, 'pressure');
  switch (problem.kind) {
    case 'outside-formula':
      return `${wordsOfOutside(problem)}.`;
    case 'not-a-number':
      return `The ${problem.argument} is no number.`;
    case 'negative-amount':
      return `The ${quantityInfo(problem.quantity).title} cannot be negative.`;
    case 'pressure-not-positive':
      return `The pressure must be above zero, and ${pascal(problem.pressure)} is not.`;
    case 'vapour-pressure-above-pressure':
      return `The vapour pressure, ${pascal(problem.vapourPressure)}, would reach the total pressure, ${pascal(problem.pressure)}.`;
    case 'dew-point-above-air-temperature':
      return `The dew point, ${celsius(problem.celsius)}, lies above the air temperature, ${celsius(problem.airCelsius)}.`;
    case 'frost-point-above-saturation':
      return `The frost point, ${celsius(problem.celsius)}, means more vapour than air of ${celsius(problem.airCelsius)} holds.`;
    case 'wet-bulb-above-air-temperature':
      return `The wet bulb, ${celsius(problem.celsius)}, lies above the air temperature, ${celsius(problem.airCelsius)}.`;
    case 'supersaturated': {
      const humidity = showQuantity(problem.relativeHumidity, 'relative-humidity');
      return `That is ${humidity} at ${celsius(problem.airCelsius)}, and air cannot hold more than 100 %RH.`;
    }
    case 'no-ice-above-triple-point':
      return `There is no ice at ${celsius(problem.celsius)}: the ${quantityInfo(problem.quantity).title} ends at 0.01 °C.`;
    case 'no-air-temperature-at-zero-humidity':
      return 'At 0 %RH a dew point does not tell the air temperature.';
    case 'too-dry-for-a-point':
      return `The air is too dry for a dew point above ${celsius(problem.coldestCelsius)}.`;
    case 'too-wet-for-a-dew-point':
      return `The vapour pressure, ${pascal(problem.vapourPressure)}, belongs to no dew point up to ${celsius(problem.hottestCelsius)}.`;
    case 'no-frost-point-above-triple-point':
      return 'The air is too wet for a frost point, which ends at 0.01 °C.';
  }
}
