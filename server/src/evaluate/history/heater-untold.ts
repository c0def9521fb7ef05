/** Salt readings of a heated probe that leave open whether its heater worked meanwhile: they tell nothing of its error. */
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { saltUsed } from '../resolved/salt-choices.ts';
import type { VisitReading } from '../resolved/visit-reading.ts';

export function heaterUntold({ using, heater }: VisitReading, point: Pick<ResolvedPoint, 'heater'>): boolean {
  return point.heater.on && heater === undefined && saltUsed(using) !== undefined;
}
