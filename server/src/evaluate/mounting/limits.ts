/** Where condensate forms: the inner surfaces of fittings and walls, and the dew point. */
import type { SpaceEvaluation } from '../air/space.ts';
import { figureBound, limit, settingBound } from '../facts/limit.ts';
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
