/** What it costs a report to be computed with a temperature that is not that of the air. */
import { valueIfOk } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Computed } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { lazyInput } from '../facts/inputs.ts';
import { derivationOf, quantityValue } from '../facts/quantity-value.ts';
import { isUnread } from '../facts/unread.ts';
import { sensorWarming } from '../resolved/heater.ts';
import { inSpace, reportFact } from '../resolved/point-fact.ts';
import type { ReportEvaluation, ResolvedPoint } from '../resolved/resolved-point.ts';

export const fixedTemperatureError = reportFact('fixed-temperature-error', {
  title: (quantity) => `error of the ${quantityInfo(quantity).title} from the fixed air temperature`,
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: inSpace((point, space, quantity) => {
    const evaluated = readReport(point, quantity);
    if (evaluated?.source.kind !== 'fixed') return undefined;
    const { celsius } = evaluated.source;
    const place = evaluated.report.value.airTemperature;
    const input = lazyInput('air temperature taken', () => showQuantity(celsius, 'temperature'), place);
    return takenTemperatureError(space, quantity, () => celsius, input);
  }),
});

export const heatedHeadError = reportFact('heated-head-error', {
  title: (quantity) => `error of the ${quantityInfo(quantity).title} from the heated head`,
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: inSpace((point, space, quantity) => {
    const isTaken = readReport(point, quantity)?.source.kind === 'heated-head';
    const warming = isTaken ? sensorWarming(point.heater) : undefined;
    if (warming === undefined) return undefined;
    return takenTemperatureError(space, quantity, ({ airCelsius }) => airCelsius + warming.rise, warming.input);
  }),
});

function readReport({ reports }: ResolvedPoint, quantity: QuantityName): ReportEvaluation | undefined {
  const evaluated = reports.find((candidate) => candidate.quantity === quantity);
  const isRead = evaluated !== undefined && !isUnread(evaluated.report, 'pressure', evaluated.report.value.pressure);
  return isRead ? evaluated : undefined;
}

/**
 * The largest difference between a quantity at the temperature taken and at the air temperature, same vapour pressure.
 *
 * @param celsiusAt the temperature taken for that of the air, °C
 */
function takenTemperatureError(
  space: SpaceEvaluation,
  quantity: QuantityName,
  celsiusAt: (state: AirState) => number,
  input: FactInput,
): Computed {
  const { relation, formulas } = derivationOf(quantity);
  const worst = worstOverPhases(space.phases, 'highest', (state) => {
    const reported = valueIfOk(quantityValue(quantity, { ...state, airCelsius: celsiusAt(state) }));
    const there = valueIfOk(quantityValue(quantity, state));
    return reported === undefined || there === undefined ? undefined : Math.abs(reported - there);
  });
  const base = { relation: `|at the temperature taken − at the air temperature|; ${relation}`, formulas };
  return worstFact(base, worst, () => [input]);
}
