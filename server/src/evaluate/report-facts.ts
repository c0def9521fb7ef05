/** The facts of every report of a point: its range, and what its air temperature and its pressure cost it. */
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import { pressureEffect } from './air/pressure-effect.ts';
import { reportPressures } from './air/report-pressures.ts';
import { takenTemperatureError } from './air-temperature/taken-temperature.ts';
import { sensorWarming } from './dryness/dryness.ts';
import type { Fact } from './facts/fact.ts';
import { isUnread } from './facts/unread.ts';
import type { ReportEvaluation, ResolvedPoint } from './point.ts';
import { quantityExtreme, type SpaceEvaluation } from './space.ts';

export function reportFacts(resolved: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  return resolved.reports.flatMap((evaluated) => {
    const { quantity, report } = evaluated;
    if (isUnread(report, 'pressure', report.value.pressure)) return [];
    const pressures = reportPressures(report.value, resolved.settings);
    const byWeather =
      quantityInfo(quantity).needsPressure && pressures.own === undefined && space.pressure.source !== 'given';
    return [
      quantityExtreme(space, quantity, 'lowest', pressures),
      quantityExtreme(space, quantity, 'highest', pressures),
      ...temperatureErrors(evaluated, resolved, space),
      ...(byWeather ? [pressureEffect(space, quantity, pressures)] : []),
    ];
  });
}

function temperatureErrors(
  { quantity, report, source }: ReportEvaluation,
  { heater }: ResolvedPoint,
  space: SpaceEvaluation,
): readonly Fact[] {
  const origin = report.value.airTemperature?.origin;
  if (source.kind === 'fixed') {
    const { celsius } = source;
    const text = showQuantity(celsius, 'temperature');
    const input = { label: 'air temperature taken', text, ...(origin === undefined ? {} : { origin }) };
    const taken = {
      id: 'fixed-temperature-error',
      from: 'the fixed air temperature',
      celsiusAt: () => celsius,
      input,
    } as const;
    return [takenTemperatureError(space, quantity, taken)];
  }
  const warming = source.kind === 'heated-head' ? sensorWarming(heater) : undefined;
  if (warming === undefined) return [];
  const { rise, input } = warming;
  const celsiusAt = (state: { readonly airCelsius: number }): number => state.airCelsius + rise;
  return [
    takenTemperatureError(space, quantity, { id: 'heated-head-error', from: 'the heated head', celsiusAt, input }),
  ];
}
