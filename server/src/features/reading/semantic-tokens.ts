/** Which words of a file are numbers, units, quantities and names, so that themes can tell them apart. */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { remembered } from '../../base/remembered.ts';
import { overlaps, shiftRange, type TextRange } from '../../base/text-range.ts';
import type { FileKind, SchemaNode } from '../../model/schema.ts';
import { isQuantityName } from '../../quantity/quantities.ts';
import { takeApart } from '../../quantity/value-form.ts';
import type { Part, ScalarNode } from '../../syntax/nodes.ts';
import { occurrencesInPart } from '../moving/occurrences.ts';
import { textRangeOf, visitPart } from '../support/schema-walk.ts';

export interface SemanticToken {
  readonly range: TextRange;
  readonly kind: 'value' | 'unit' | 'quantity' | 'name' | 'given-name';
}

/** @param within leaves out the parts that do not touch this stretch of the file */
export function semanticTokens({ kind, tree }: ParsedFile, within?: TextRange): readonly SemanticToken[] {
  return tree.parts.flatMap(({ part, offset }) => {
    const isShown = within === undefined || overlaps({ start: offset, end: offset + part.text.length }, within);
    if (!isShown) return [];
    return TOKENS[kind](part).map((token) => ({ kind: token.kind, range: shiftRange(token.range, offset) }));
  });
}

const TOKENS: Readonly<Record<FileKind, (part: Part) => readonly SemanticToken[]>> = {
  site: remembered((part: Part) => tokensOf('site', part)),
  kit: remembered((part: Part) => tokensOf('kit', part)),
  visit: remembered((part: Part) => tokensOf('visit', part)),
};

function tokensOf(kind: FileKind, part: Part): readonly SemanticToken[] {
  const tokens: SemanticToken[] = occurrencesInPart(kind, part).map(({ role, range }) => ({
    kind: role === 'definition' ? 'given-name' : 'name',
    range,
  }));
  visitPart(kind, part, {
    key: (key, mapPath) => {
      const isReport = mapPath.length === 3 && mapPath[2] === 'reports';
      if (isReport && isQuantityName(key.text)) tokens.push({ kind: 'quantity', range: textRangeOf(key) });
    },
    node: (node, schema) => {
      if (node.kind === 'scalar' && schema !== undefined) tokens.push(...tokensOfScalar(node, schema));
    },
  });
  return tokens.sort((one, other) => one.range.start - other.range.start);
}

function tokensOfScalar(node: ScalarNode, schema: SchemaNode): readonly SemanticToken[] {
  if (node.textStart === undefined || node.text === '') return [];
  if (schema.enum !== undefined && isQuantityName(node.text)) return [{ kind: 'quantity', range: textRangeOf(node) }];
  const mayBeValue = schema.quantity !== undefined || schema['air-temperature-source'] === true;
  const form = mayBeValue ? takeApart(node.text) : undefined;
  if (form === undefined) return [];
  const { numbersRange, symbolRange } = form;
  const value: SemanticToken = { kind: 'value', range: shiftRange(numbersRange, node.textStart) };
  if (symbolRange.start === symbolRange.end) return [value];
  return [value, { kind: 'unit', range: shiftRange(symbolRange, node.textStart) }];
}
