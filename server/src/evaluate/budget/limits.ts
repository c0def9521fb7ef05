/** What the uncertainty of a report is held against. */
import type { QuantityName } from '../../quantity/quantities.ts';
import { boundIf, type Limit, limit, partBound, writtenBound } from '../facts/limit.ts';
import { type ResolvedPoint, toleranceOf } from '../resolved/resolved-point.ts';
import { expandedUncertainty } from './uncertainty-facts.ts';

/** Of the tolerance; from here on little is left for what the budget does not know. */
const MARGINAL = 0.8;

export function toleranceLimit(quantity: QuantityName): Limit<ResolvedPoint> {
  return limit(expandedUncertainty(quantity), 'at most', (point) =>
    boundIf(toleranceOf(point, quantity), writtenBound),
  );
}

export function comfortableTolerance(quantity: QuantityName): Limit<ResolvedPoint> {
  return limit(expandedUncertainty(quantity), 'at most', (point) =>
    boundIf(toleranceOf(point, quantity), (tolerance) => partBound(tolerance, MARGINAL, 'four fifths of')),
  );
}
