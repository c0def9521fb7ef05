/** Units behind a number. */
import { DIMENSIONS, type Dimension } from '../../../quantity/dimension.ts';
import { likelyUnits } from '../../../quantity/likely-units.ts';
import { takeApart } from '../../../quantity/value-form.ts';
import { dimensionOf } from '../../support/place-dimension.ts';
import { type CompletionItem, plainItem } from './completion-item.ts';
import type { CompletionContext } from './context.ts';
import { exampleOf } from './value-shape.ts';

/** Undefined where no number stands before the cursor. */
export function unitItems({ place, schema, quantity }: CompletionContext): readonly CompletionItem[] | undefined {
  const form = takeApart(place.before);
  const endsBlank = /\s$/.test(place.before);
  const dimension = dimensionOf(schema, quantity, '');
  if (form === undefined || !endsBlank || form.rest !== '') return undefined;
  if (schema.quantity?.dimension === 'current-or-voltage') return [...unitsOf('current'), ...unitsOf('voltage')];
  if (dimension === undefined) return [];
  const example = exampleOf(schema, dimension);
  const likely = likelyUnits(form.high, dimension, example).map(({ symbol }) => symbol);
  const others = unitsOf(dimension).filter(({ label }) => !likely.includes(label));
  return [...likely.map((symbol) => unitItem(symbol, dimension)), ...others, ...gaugeUnits(schema, dimension)];
}

function unitsOf(dimension: Dimension): readonly CompletionItem[] {
  return DIMENSIONS[dimension].units.map(({ symbol }) => unitItem(symbol, dimension));
}

function unitItem(symbol: string, dimension: Dimension): CompletionItem {
  return plainItem(symbol, 'unit', { detail: DIMENSIONS[dimension].words });
}

/** Only what a space or a report takes as its pressure is read against the air pressure; a vapour pressure is not. */
function gaugeUnits(schema: CompletionContext['schema'], dimension: Dimension): readonly CompletionItem[] {
  if (dimension !== 'pressure' || schema.quantity?.dimension !== 'pressure') return [];
  return DIMENSIONS.pressure.units.map(({ symbol }) =>
    plainItem(`${symbol}(g)`, 'unit', { detail: 'gauge, above the air pressure of the site' }),
  );
}
