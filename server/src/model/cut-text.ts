/** Texts that a comma has cut in two: in `{title: Kiln 2, green oak}` the comma ends the title, and the rest is a key. */
import type { Cursor } from '../syntax/cursor.ts';
import type { PartEdit } from '../syntax/edit.ts';
import type { PairNode } from '../syntax/nodes.ts';

export interface CutText {
  /** The whole text as it was meant. */
  readonly text: string;
  /** True for the first of the keys that its rest was cut into. */
  readonly isFirst: boolean;
  /** Puts the whole text in quotes. */
  readonly edit: PartEdit | undefined;
}

/** @param name a key of the map that stands there without its colon @returns undefined where it is no rest of a text */
export function cutTextAt({ part, node, via }: Cursor, name: string): CutText | undefined {
  if (node.kind !== 'map' || !node.flow) return undefined;
  const index = node.pairs.findIndex(({ key }) => key.text === name);
  if (!hasNoColon(node.pairs[index])) return undefined;
  let [first, last] = [index, index];
  while (hasNoColon(node.pairs[first - 1])) first--;
  while (hasNoColon(node.pairs[last + 1])) last++;
  const value = node.pairs[first - 1]?.value;
  const end = node.pairs[last]?.key.end;
  if (value?.kind !== 'scalar' || typeof value.value !== 'string' || end === undefined) return undefined;
  const text = part.text.slice(value.start, end);
  if (value.textStart !== value.start || /["\\\n]/.test(text)) return undefined;
  const edit = { part, start: value.start, end, newText: `"${text}"` };
  return { text, isFirst: first === index, edit: via === undefined ? edit : undefined };
}

function hasNoColon(pair: PairNode | undefined): boolean {
  return pair?.value.kind === 'scalar' && pair.value.value === null && pair.value.textStart === undefined;
}
