/** What the limit of a humidity alarm is as a dew-point depression: near saturation that is told better. */
import { valueIfOk } from '../../base/outcome.ts';
import { dewPointDepression } from '../../physics/air/quantities.ts';
import { vapourPressureFromRelativeHumidity } from '../../physics/air/vapour-pressure.ts';
import { roundUpToStep } from '../../physics/mathematics/sensible-steps.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Budget } from '../budget/budget.ts';
import type { Fact } from '../facts/fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import type { AlarmUse } from '../resolved/alarm-use.ts';

/** A depression is set to a tenth of a kelvin, K. */
const DEPRESSION_STEP = 0.1;

const SATURATED = 1;

/**
 * For alarms of the relative humidity that lie closer to saturation than the uncertainty: limit and clearing value, at
 * the air temperature and pressure of the budget.
 */
export function depressionFacts({ name, quantity, limit, clear }: AlarmUse, budget: Budget): readonly Fact[] {
  const { at, state, expandedUncertainty } = budget;
  if (quantity !== 'relative-humidity' || SATURATED - limit.value.value >= expandedUncertainty) return [];
  const { airCelsius, pressure } = state;
  const depressionAt = (id: string, title: string, relativeHumidity: number): readonly Fact[] => {
    const vapourPressure = vapourPressureFromRelativeHumidity(relativeHumidity, airCelsius, pressure);
    const depression = valueIfOk(dewPointDepression({ airCelsius, pressure, vapourPressure }));
    if (depression === undefined || depression < 0) return [];
    const { relation, formulas } = derivationOf('dew-point-depression');
    const value = roundUpToStep(depression, DEPRESSION_STEP);
    const inputs = [
      { label: 'relative humidity', text: showQuantity(relativeHumidity, 'relative-humidity'), origin: limit.origin },
      { label: 'air temperature', text: showQuantity(airCelsius, 'temperature') },
    ];
    const notes = ['Rounded up to 0.1 K.'];
    return [{ id, title, dimension: 'temperature-difference', value, at, inputs, relation, formulas, notes }];
  };
  return [
    ...depressionAt(
      `alarm/${name}/depression-at-limit`,
      `dew-point depression at the limit of ${name}`,
      limit.value.value,
    ),
    ...(clear === undefined
      ? []
      : depressionAt(
          `alarm/${name}/depression-at-clear`,
          `dew-point depression where ${name} clears`,
          clear.value.value,
        )),
  ];
}
