/** What the limit of a humidity alarm is as a dew-point depression: near saturation that is told better. */

import { valueIfOk } from '../../base/outcome.ts';
import { exceeds } from '../../base/rounding.ts';
import type { Located } from '../../model/located.ts';
import { dewPointDepression } from '../../physics/air/quantities.ts';
import { SATURATED } from '../../physics/air/state.ts';
import { vapourPressureFromRelativeHumidity } from '../../physics/air/vapour-pressure.ts';
import { roundUpToStep } from '../../physics/mathematics/sensible-steps.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Budget } from '../budget/budget.ts';
import type { Computed } from '../facts/declared-fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import type { AlarmUse } from '../resolved/alarm-use.ts';
import { alarmFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type JudgedAlarm, judgedAlarm } from './alarm-budget.ts';

/** A depression is set to a tenth of a kelvin, K. */
const DEPRESSION_STEP = 0.1;

/** Of alarms of the relative humidity that lie closer to saturation than the uncertainty. */
export const depressionAtLimit = alarmFact('depression-at-limit', {
  title: (name) => `dew-point depression at the limit of ${name}`,
  dimension: 'temperature-difference',
  compute: nearSaturation(({ alarm, budget }) => depressionAt(alarm.limit, alarm, budget)),
});

export const depressionAtClear = alarmFact('depression-at-clear', {
  title: (name) => `dew-point depression where ${name} clears`,
  dimension: 'temperature-difference',
  compute: nearSaturation(({ alarm, budget }) =>
    alarm.clear === undefined ? undefined : depressionAt(alarm.clear, alarm, budget),
  ),
});

function nearSaturation(compute: (judged: JudgedAlarm) => Computed | undefined) {
  return (point: ResolvedPoint, name: string): Computed | undefined => {
    const judged = judgedAlarm(point, name);
    if (judged?.alarm.quantity !== 'relative-humidity') return undefined;
    const distance = SATURATED - judged.alarm.limit.value.value;
    return exceeds(judged.budget.expandedUncertainty, distance) ? compute(judged) : undefined;
  };
}

/** At the air temperature and pressure of the budget; none for a humidity beyond saturation. */
function depressionAt(humidity: Located<Quantity>, { limit }: AlarmUse, { at, state }: Budget): Computed | undefined {
  const { airCelsius, pressure } = state;
  const relativeHumidity = humidity.value.value;
  const vapourPressure = vapourPressureFromRelativeHumidity(relativeHumidity, airCelsius, pressure);
  const depression = valueIfOk(dewPointDepression({ airCelsius, pressure, vapourPressure }));
  if (depression === undefined || depression < 0) return undefined;
  return {
    value: roundUpToStep(depression, DEPRESSION_STEP),
    at,
    derivation: () => ({
      inputs: [
        { label: 'relative humidity', text: showQuantity(relativeHumidity, 'relative-humidity'), origin: limit.origin },
        { label: 'air temperature', text: showQuantity(airCelsius, 'temperature') },
      ],
      ...derivationOf('dew-point-depression'),
      notes: ['Rounded up to 0.1 K.'],
    }),
  };
}
