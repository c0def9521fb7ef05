/** What the uncertainty of a report is held against. */
import { rememberedByName } from '../../base/remembered.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import { boundIf, limit, partBound, writtenBound } from '../facts/limit.ts';
import { toleranceOf } from '../resolved/resolved-point.ts';
import { expandedUncertainty } from './uncertainty-facts.ts';

/** Of the tolerance; from here on little is left for what the budget does not know. */
const MARGINAL = 0.8;

export const toleranceLimit = rememberedByName((quantity: QuantityName) =>
  limit(expandedUncertainty(quantity), 'at most', (point) => boundIf(toleranceOf(point, quantity), writtenBound)),
);

export const comfortableTolerance = rememberedByName((quantity: QuantityName) =>
  limit(expandedUncertainty(quantity), 'at most', (point) =>
    boundIf(toleranceOf(point, quantity), (tolerance) => partBound(tolerance, MARGINAL, 'four fifths of')),
  ),
);
