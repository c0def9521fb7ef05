/**
 * Where a person is typing. The line at the cursor seldom parses, so the part is read up to the word at the cursor,
 * with a mark in place of the word: what the parser makes of the mark tells the path. What stands behind the cursor
 * is read with the mark as a whole key or value, so that the unfinished line does no harm.
 */
import type { ParsedFile } from '../../../analysis/parsed-file.ts';
import type { TextRange } from '../../../base/text-range.ts';
import type { MapNode, Part, SyntaxNode } from '../../../syntax/nodes.ts';
import { parsePart } from '../../../syntax/parse-part.ts';

export interface TypingPlace {
  /** From the top level down: to the map whose key is typed, or to the value. */
  readonly path: readonly string[];
  readonly role: 'key' | 'value';
  /** What is replaced: the word at the cursor, in the file. */
  readonly word: TextRange;
  /** What stands in the same value before the word: `0 .. 100 ` before a unit. */
  readonly before: string;
  /** The keys beside the place, each with its text where it is a scalar, in the map that has the key or the value. */
  readonly siblings: ReadonlyMap<string, string>;
  /** The other items, where the place is in a list. */
  readonly items: readonly string[];
  readonly inFlow: boolean;
  /** True where nothing but the word stands on the line before the cursor. */
  readonly onOwnLine: boolean;
  /** True where the key has its colon already. */
  readonly hasColon: boolean;
  /** True where a blank has to be put before the word: right behind a colon. */
  readonly needsBlank: boolean;
}

/** A character for private use, which no file of ours holds. */
const MARK = '\uE000';
const WORD_BEFORE = /[^\s,{}[\]:"'#]*$/;
const WORD_AFTER = /^[^\s,{}[\]:"'#]*/;

/** Undefined where nothing can be completed: in a comment, or where the text is too broken to tell. */
export function typingPlace({ tree, text }: ParsedFile, offset: number): TypingPlace | undefined {
  const lineStart = text.lastIndexOf('\n', offset - 1) + 1;
  const start = offset - (WORD_BEFORE.exec(text.slice(lineStart, offset))?.[0].length ?? 0);
  const word = { start, end: offset + (WORD_AFTER.exec(text.slice(offset, offset + 200))?.[0].length ?? 0) };
  const onOwnLine = text.slice(lineStart, start).trim() === '';
  const base = { word, onOwnLine, hasColon: /^[ \t]*:/.test(text.slice(word.end, word.end + 20)) };
  if (start === lineStart) return topLevelPlace(tree.parts, base);
  const placed = tree.parts.findLast((candidate) => candidate.offset <= start);
  if (placed === undefined) return undefined;
  const { part } = placed;
  const at = start - placed.offset;
  const needsBlank = part.text.charAt(at - 1) === ':';
  const quote = /["']/.exec(part.text.charAt(at - 1))?.[0] ?? '';
  const typed = `${part.text.slice(0, at)}${needsBlank ? ' ' : ''}${MARK}`;
  const found = base.hasColon ? read(part, `${typed}:`) : (read(part, typed + quote) ?? read(part, `${typed}:`));
  if (found === undefined) return undefined;
  const isKey = found.role === 'key' || (onOwnLine && found.list === undefined && found.before === '');
  const rest = `${isKey && !base.hasColon ? ':' : ''}${part.text.slice(word.end - placed.offset)}`;
  const { map } = read(part, typed + rest) ?? (isKey && found.role === 'value' ? { map: undefined } : found);
  return {
    ...base,
    needsBlank,
    path: found.path,
    role: isKey ? 'key' : 'value',
    before: found.before,
    inFlow: found.inFlow,
    siblings: siblingsIn(map),
    items: itemsOf(found.list),
  };
}

function topLevelPlace(
  parts: ParsedFile['tree']['parts'],
  base: Pick<TypingPlace, 'word' | 'onOwnLine' | 'hasColon'>,
): TypingPlace {
  const siblings = new Map<string, string>();
  for (const { part, offset } of parts) {
    if (part.path.length === 2) continue;
    for (const { key } of part.root?.pairs ?? []) {
      const isTyped = offset + key.start <= base.word.start && base.word.start <= offset + key.end;
      if (!isTyped) siblings.set(key.text, '');
    }
  }
  return { ...base, path: [], role: 'key', before: '', siblings, items: [], inFlow: false, needsBlank: false };
}

function read(part: Part, text: string): Found | undefined {
  const { root } = parsePart(part.path, text);
  return root === undefined ? undefined : findMark(root, part.path.slice(0, -1), undefined);
}

interface Found {
  readonly path: readonly string[];
  readonly role: 'key' | 'value';
  readonly before: string;
  readonly inFlow: boolean;
  readonly map: MapNode | undefined;
  readonly list: readonly SyntaxNode[] | undefined;
}

function findMark(node: SyntaxNode, path: readonly string[], map: MapNode | undefined): Found | undefined {
  if (node.kind === 'map') {
    for (const { key, value } of node.pairs.toReversed()) {
      if (key.text === MARK) return { path, role: 'key', before: '', inFlow: node.flow, map: node, list: undefined };
      const found = findMark(value, [...path, key.text], node);
      if (found !== undefined) return found.map === node ? { ...found, inFlow: found.inFlow || node.flow } : found;
    }
  }
  if (node.kind === 'list') {
    for (const [index, item] of [...node.items.entries()].toReversed()) {
      const found = findMark(item, [...path, String(index)], map);
      if (found === undefined) continue;
      return found.map === map ? { ...found, inFlow: node.flow, list: found.list ?? node.items } : found;
    }
  }
  if (node.kind !== 'scalar' || !node.text.endsWith(MARK)) return undefined;
  return { path, role: 'value', before: node.text.slice(0, -1), inFlow: false, map, list: undefined };
}

function siblingsIn(map: MapNode | undefined): ReadonlyMap<string, string> {
  const siblings = new Map<string, string>();
  for (const { key, value } of map?.pairs ?? []) {
    if (key.text.includes(MARK)) continue;
    siblings.set(key.text, value.kind === 'scalar' ? value.text.replace(MARK, '') : '');
  }
  return siblings;
}

function itemsOf(list: readonly SyntaxNode[] | undefined): readonly string[] {
  return (list ?? []).flatMap((item) => (item.kind === 'scalar' && !item.text.includes(MARK) ? [item.text] : []));
}
