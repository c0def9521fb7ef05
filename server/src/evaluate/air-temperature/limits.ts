/** What errors of the air temperature may cost a report. */
import { rememberedByName } from '../../base/remembered.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import { boundIf, figureBound, type Limit, limit, partBound, writtenBound } from '../facts/limit.ts';
import { type ResolvedPoint, toleranceOf } from '../resolved/resolved-point.ts';
import { airTemperatureCost, airTemperatureError } from './cost.ts';
import { SHARE_OF_TOLERANCE } from './cost-of-error.ts';
import type { ErrorKind } from './error-models.ts';
import { fixedTemperatureError } from './taken-temperature.ts';

type ReportLimit = (quantity: QuantityName) => Limit<ResolvedPoint>;

/** K: a smaller error is not worth a word. */
const SMALLEST_TOLD = 0.01;

/** One error may take a third of the tolerance. */
export const costLimit = rememberedByName(
  (kind: ErrorKind): ReportLimit =>
    rememberedByName((quantity) =>
      limit(airTemperatureCost[kind](quantity), 'at most', (point) =>
        boundIf(toleranceOf(point, quantity), (tolerance) => partBound(tolerance, SHARE_OF_TOLERANCE, 'a third of')),
      ),
    ),
);

/** A fixed air temperature may take all of it. */
export const fixedTemperatureLimit: ReportLimit = rememberedByName((quantity) =>
  limit(fixedTemperatureError(quantity), 'at most', (point) => boundIf(toleranceOf(point, quantity), writtenBound)),
);

/** An error that a person on site would see. */
export const smallestTold = rememberedByName(
  (kind: ErrorKind): ReportLimit =>
    rememberedByName((quantity) =>
      limit(airTemperatureError[kind](quantity), 'at least', () =>
        figureBound(SMALLEST_TOLD, 'temperature-difference'),
      ),
    ),
);
