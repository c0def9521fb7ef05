/** Salt readings of a heated probe that leave open whether its heater worked meanwhile. */
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { VisitReading } from '../../evaluate/visit-reading.ts';

export function heaterUntold({ using, heater }: VisitReading, point: PointEvaluation): boolean {
  return point.heater.on && heater === undefined && using?.startsWith('saturated-salt ') === true;
}
