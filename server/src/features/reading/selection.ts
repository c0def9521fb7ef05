/** The ranges that a selection grows through: number or unit, value, pair, map, entry, section, file. */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { shiftRange, type TextRange, touches } from '../../base/text-range.ts';
import { takeApart } from '../../quantity/value-form.ts';
import type { ScalarNode, SyntaxNode } from '../../syntax/nodes.ts';

/** @returns the ranges around an offset, the smallest first, each inside the next */
export function selectionAt({ tree, text }: ParsedFile, offset: number): readonly TextRange[] {
  const ranges: TextRange[] = [{ start: 0, end: text.length }];
  const placed = tree.parts.findLast((candidate) => candidate.offset <= offset);
  if (placed?.part.root !== undefined) {
    const { part } = placed;
    const inside: TextRange[] = [];
    growInto(placed.part.root, offset - placed.offset, inside);
    ranges.push(...inside.map((range) => shiftRange(range, placed.offset)));
    if (part.path.length === 2) ranges.splice(1, 0, sectionAround(tree.parts, placed.part.path[0], offset));
  }
  return ranges.toReversed().filter((range, index, all) => !sameRange(range, all[index - 1]));
}

function growInto(node: SyntaxNode, at: number, ranges: TextRange[]): void {
  ranges.push({ start: node.start, end: node.end });
  if (node.kind === 'map') {
    const pair = node.pairs.find(({ key, value }) =>
      touches({ start: key.start, end: Math.max(key.end, value.end) }, at),
    );
    if (pair === undefined) return;
    const { key, value } = pair;
    ranges.push({ start: key.start, end: Math.max(key.end, value.end) });
    growInto(touches(key, at) ? key : value, at, ranges);
  } else if (node.kind === 'list') {
    const item = node.items.find((candidate) => touches(candidate, at));
    if (item !== undefined) growInto(item, at, ranges);
  } else if (node.kind === 'scalar') ranges.push(...insideScalar(node, at));
}

/** The text without its quotes, then the numbers or the unit alone. */
function insideScalar({ text, textStart }: ScalarNode, at: number): readonly TextRange[] {
  if (textStart === undefined || text === '') return [];
  const content = { start: textStart, end: textStart + text.length };
  const form = takeApart(text);
  const pieces = form === undefined ? [] : [form.numbersRange, form.symbolRange];
  const piece = pieces.map((range) => shiftRange(range, textStart)).find((range) => touches(range, at));
  return piece === undefined || piece.start === piece.end ? [content] : [content, piece];
}

/** From the key of a section to the end of its last entry. */
function sectionAround(parts: ParsedFile['tree']['parts'], section: string | undefined, offset: number): TextRange {
  const isOther = ({ part }: (typeof parts)[number]): boolean => part.path[0] !== section;
  const at = parts.findLastIndex((candidate) => candidate.offset <= offset);
  const before = parts.slice(0, at).findLastIndex(isOther);
  const after = parts.findIndex((candidate, index) => index > at && isOther(candidate));
  const first = parts[before + 1];
  const last = parts[after < 0 ? parts.length - 1 : after - 1];
  const key = first?.part.root?.pairs[0]?.key.start ?? 0;
  return { start: (first?.offset ?? 0) + key, end: (last?.offset ?? 0) + (last?.part.root?.end ?? 0) };
}

function sameRange(one: TextRange, other: TextRange | undefined): boolean {
  return one.start === other?.start && one.end === other.end;
}
