/** Words that a value may be, each with its meaning; and values with a unit as they usually are. */
import { isQuantityName } from '../../../quantity/quantities.ts';
import { dimensionOf } from '../../support/place-dimension.ts';
import { type CompletionItem, plainItem, withDetail } from './completion-item.ts';
import type { CompletionContext } from './context.ts';
import { exampleOf, valuePieces } from './value-shape.ts';

export function wordItems({ schema, place }: CompletionContext): readonly CompletionItem[] {
  const { enum: words, enumDescriptions = [], examples = [], default: builtIn } = schema;
  if (words !== undefined) {
    return words.map((word, index) =>
      plainItem(String(word), 'word', {
        ...withDetail(word === builtIn ? 'built in' : undefined),
        documentation: enumDescriptions[index] ?? '',
      }),
    );
  }
  if (schema.const !== undefined) return [plainItem(String(schema.const), 'word')];
  if (schema.type === 'boolean') return ['true', 'false'].map((word) => plainItem(word, 'word'));
  const isVocabulary = schema.pattern !== undefined && examples.length > 1;
  const isWordList = isVocabulary || schema.type === 'integer' || schema.type === 'number';
  if (!isWordList || schema.reference !== undefined) return [];
  return examples
    .map(String)
    .filter((word) => !place.items.includes(word))
    .map((word) => plainItem(word, 'word'));
}

/** A whole value where nothing is typed yet. */
export function valueItems({ schema, place, quantity }: CompletionContext): readonly CompletionItem[] {
  const dimension = dimensionOf(schema, quantity, '');
  if (dimension === undefined || schema['air-temperature-source'] === true || place.before !== '') return [];
  const own = (schema.examples ?? []).map(String);
  const examples = new Set([exampleOf(schema, dimension), ...(isOfQuantity(schema) ? [] : own)]);
  return [...examples].map((example) => ({
    label: example,
    kind: 'value',
    ...withDetail(example === String(schema.default) ? 'built in' : undefined),
    insert: valuePieces(example),
  }));
}

function isOfQuantity({ quantity }: CompletionContext['schema']): boolean {
  return quantity?.dimension === 'of-quantity' || quantity?.dimension === 'difference-of-quantity';
}

/** True where the words are the names of quantities, which are offered by what the point can report. */
export function takesQuantity({ enum: words }: CompletionContext['schema']): boolean {
  return words?.some((word) => isQuantityName(String(word))) === true;
}
