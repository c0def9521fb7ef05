/** The range of every report of a point, and what the weather's pressure costs it. */
import { exceeds } from '../../base/rounding.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { pressureEffect as effectInSpace } from '../air/pressure-effect.ts';
import { type RangeEnd, rangeEnd, titleOfEnd } from '../air/quantity-range.ts';
import { type ReportPressures, reportPressures } from '../air/report-pressures.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { isUnread } from '../facts/unread.ts';
import { inSpace, reportFact } from './point-fact.ts';
import type { ResolvedPoint } from './resolved-point.ts';

export const lowestReported = reportedEnd('lowest');
export const highestReported = reportedEnd('highest');

function reportedEnd(end: RangeEnd) {
  return reportFact(end, {
    title: (quantity) => titleOfEnd(quantity, end),
    dimension: (quantity) => quantityInfo(quantity).dimension,
    compute: inSpace((point, space, quantity) => {
      const pressures = pressuresOf(point, quantity);
      if (pressures !== undefined) return rangeEnd(space, quantity, end, pressures);
      return end === 'lowest' && quantity === 'frost-point' && goesBelowZero(point, space)
        ? rangeEnd(space, quantity, end)
        : undefined;
    }),
  });
}

/** A dew point that goes below 0 °C is told as a frost point as well. */
function goesBelowZero({ reports }: ResolvedPoint, space: SpaceEvaluation): boolean {
  const { value } = rangeEnd(space, 'dew-point', 'lowest');
  return reports.some(({ quantity }) => quantity === 'dew-point') && value !== undefined && exceeds(0, value);
}

/** Of a report whose pressure, if it gives one, can be read. */
function pressuresOf({ reports, settings }: ResolvedPoint, quantity: QuantityName): ReportPressures | undefined {
  const report = reports.find((candidate) => candidate.quantity === quantity)?.report;
  if (report === undefined || isUnread(report, 'pressure', report.value.pressure)) return undefined;
  return reportPressures(report.value, settings);
}

/** Of reports for which nobody gives the pressure, so that the weather moves it. */
export const pressureEffect = reportFact('pressure-effect', {
  title: (quantity) => `effect of the weather's pressure on the ${quantityInfo(quantity).title}`,
  dimension: (quantity) => quantityInfo(quantity).difference,
  compute: inSpace((point, space, quantity) => {
    const pressures = pressuresOf(point, quantity);
    const isGiven = pressures?.own !== undefined || space.pressure.source === 'given';
    if (pressures === undefined || isGiven || !quantityInfo(quantity).needsPressure) return undefined;
    return effectInSpace(space, quantity, pressures);
  }),
});
