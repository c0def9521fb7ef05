/** Where condensate forms: the inner surfaces of fittings and walls, and the dew point. */
import type { Located } from '../../model/located.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { highest } from '../air/quantity-range.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { KnownFact } from '../facts/fact.ts';
import { figureBound, judged, limit, settingBound, writtenBound } from '../facts/limit.ts';
import type { Setting } from '../facts/site-settings.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { fittingSurface } from './fitting-facts.ts';
import { wallSurface } from './wall-facts.ts';

const atDewPoint = () => figureBound(0, 'temperature-difference');

export const fittingStaysDry = limit<ResolvedPoint, 'temperature-difference'>(
  fittingSurface.margin,
  'at least',
  atDewPoint,
);

export const wallStaysDry = limit<SpaceEvaluation, 'temperature-difference'>(
  wallSurface.margin,
  'at least',
  atDewPoint,
);

/** What the site asks of the wall. */
export const wallMargin = limit(wallSurface.margin, 'at least', ({ settings }: SpaceEvaluation) =>
  settingBound(settings.margin, 'temperature-difference'),
);

/** The dew point of a space where the wall of a sample line is not above it by the margin. */
export function dewPointOverLine(
  { facts }: SpaceEvaluation,
  line: Located<Quantity>,
  margin: Setting,
): KnownFact | undefined {
  const wall = writtenBound(line);
  const found = judged(facts.get(highest('dew-point')), 'below', { ...wall, value: wall.value - margin.value });
  return found?.isKept === false ? found.fact : undefined;
}
