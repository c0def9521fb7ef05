/**
 * Splits a file into parts at the lines that start a top-level key or an entry of a map such as `points`.
 *
 * YAML demands that whatever continues a value inside a block map stands deeper than the map's keys. A line that
 * looks like a key at the very indentation of a map's keys therefore starts a new entry in every legal file,
 * whatever quote, bracket or block scalar was open above. In a file that is not legal yet, because somebody is
 * typing, the damage ends at the same line. What this reasoning does not cover is not split at all.
 */
import type { TextChange } from '../base/text-change.ts';
import type { PlacedPart } from './nodes.ts';

export interface Stretch {
  readonly path: readonly string[];
  readonly start: number;
  readonly end: number;
}

/** A plain word or a closed quoted text, then a colon. */
const KEY =
  /^(?:"((?:[^"\\]|\\.)*)"|'((?:[^']|'')*)'|([^\s"'#&*!|>%@`{}[\],?:-][^\s:#]*(?:[ :#][^\s:#]+)*|-[^\s:#]+))[ \t]*:(?=[ \t]|$)/;
const MARKER = /^(?:---|\.\.\.)(?=[ \t]|$)|^%/;
/** An explicit key, or a merge key: what that merges gives way to keys of other parts. */
const NOT_SPLIT = /^(?:\?(?=[ \t]|$)|<<[ \t]*:)/;
const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
const SPACE = 32;
const HASH = 35;
const BYTE_ORDER_MARK = 0xfeff;

/** The start of a part. Where two have one path and one state, the scan goes on from them in the same way. */
interface Start {
  readonly path: readonly string[];
  readonly at: number;
}

/** The map whose entries are being looked for, and their indentation once the first is found. */
interface OpenMap {
  readonly key: string;
  readonly indent: number | undefined;
}

/**
 * @param text the whole file
 * @param entryKeys the top-level keys whose entries are parts of their own
 * @returns stretches that cover the text without gaps, or one with an empty path where the file cannot be split
 */
export function splitFile(text: string, entryKeys: ReadonlySet<string>): readonly Stretch[] {
  const starts: Start[] = [];
  const splittable = scan(text, 0, undefined, entryKeys, starts, () => false);
  return splittable && starts.length > 0 ? stretchesOf(starts, 0, text.length) : [whole(text)];
}

export interface SplitAgain {
  /** How many parts at the front, and how many at the back, hold what they held before. */
  readonly front: number;
  readonly back: number;
  readonly between: readonly Stretch[];
}

/** Splits a changed text; scans only from before the change to where the old starts come back. */
export function splitAgain(
  text: string,
  entryKeys: ReadonlySet<string>,
  before: readonly PlacedPart[],
  change: TextChange,
): SplitAgain {
  const coldly = (): SplitAgain => ({ between: splitFile(text, entryKeys), front: 0, back: 0 });
  if (before[0]?.part.path.length === 0) return coldly();
  const front = Math.max(0, before.findLastIndex(({ offset }) => offset < change.start) - 1);
  const moved = change.newEnd - change.oldEnd;
  let old = before.findIndex(({ offset }) => offset > change.oldEnd);
  if (old < 0) old = before.length;
  const starts: Start[] = [];
  const from = front === 0 ? undefined : before[front];
  const begin = from?.offset ?? 0;
  const resumed = from === undefined ? undefined : openMapAt(text, from);
  let back = 0;
  const splittable = scan(text, begin, resumed, entryKeys, starts, (start) => {
    while (old < before.length && (before[old]?.offset ?? 0) + moved < start.at) old++;
    const same = before[old];
    if (same === undefined || same.offset + moved !== start.at || !samePath(same.part.path, start.path)) return false;
    back = before.length - old;
    return true;
  });
  if (!splittable || starts.length === 0) return coldly();
  const following = before[before.length - back];
  const end = following === undefined ? text.length : following.offset + moved;
  const between = stretchesOf(starts, begin, end);
  const untouched = untouchedOf(between, before.slice(front, front + between.length), change.start);
  return { front: front + untouched, between: between.slice(untouched), back };
}

/** The scan began anew one part before the change: that one counts as untouched where the change did not reach it. */
function untouchedOf(now: readonly Stretch[], before: readonly PlacedPart[], changeStart: number): number {
  const touched = now.findIndex(({ path, start, end }, index) => {
    const old = before[index];
    if (old === undefined || end > changeStart) return true;
    return start !== old.offset || end !== old.offset + old.part.text.length || !samePath(path, old.part.path);
  });
  return touched < 0 ? now.length : touched;
}

/**
 * Collects the starts from a place on.
 * @param isKnown asked for every start; true ends the scan before it
 * @returns false where the file cannot be split
 */
function scan(
  text: string,
  from: number,
  resumed: OpenMap | undefined,
  entryKeys: ReadonlySet<string>,
  starts: Start[],
  isKnown: (start: Start) => boolean,
): boolean {
  let open = resumed;
  let next = from;
  while (next < text.length) {
    const start = next === 0 && text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : next;
    const newline = text.indexOf('\n', start);
    next = newline < 0 ? text.length : newline + 1;
    let at = start;
    while (text.charCodeAt(at) === SPACE) at++;
    const first = text.charCodeAt(at);
    if (at >= text.length || first === LINE_FEED || first === CARRIAGE_RETURN || first === HASH) continue;
    const indent = at - start;
    if (indent > 0 && open === undefined) {
      if (starts.length === 0) return false;
      continue;
    }
    if (indent > 0 && open?.indent !== undefined && open.indent !== indent) continue;
    const content = text.slice(at, newline < 0 ? text.length : newline);
    if (NOT_SPLIT.test(content) || (indent === 0 && MARKER.test(content))) return false;
    const key = keyOf(content);
    if (key === undefined) {
      if (starts.length === 0) return false;
      if (open?.indent === undefined) open = undefined;
      continue;
    }
    const found = { path: indent === 0 || open === undefined ? [key.name] : [open.key, key.name], at: start };
    if (isKnown(found)) return true;
    starts.push(found);
    if (indent > 0 && open !== undefined) open = { key: open.key, indent };
    else open = entryKeys.has(key.name) && key.restIsEmpty ? { key: key.name, indent: undefined } : undefined;
  }
  return true;
}

/** The state of the scan as it comes to a start that is known. */
function openMapAt(text: string, { part: { path }, offset }: PlacedPart): OpenMap | undefined {
  if (path.length < 2) return undefined;
  let at = offset;
  while (text.charCodeAt(at) === SPACE) at++;
  return { key: path[0] ?? '', indent: at - offset };
}

/** The first holds what stands before its key too. */
function stretchesOf(starts: readonly Start[], begin: number, end: number): readonly Stretch[] {
  return starts.map(({ path, at }, index) => ({
    path,
    start: index === 0 ? begin : at,
    end: starts[index + 1]?.at ?? end,
  }));
}

function whole(text: string): Stretch {
  return { path: [], start: 0, end: text.length };
}

function samePath(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((name, index) => name === other[index]);
}

function keyOf(content: string): { readonly name: string; readonly restIsEmpty: boolean } | undefined {
  const match = KEY.exec(content);
  if (match === null) return undefined;
  const rest = content.slice(match[0].length).trim();
  return { name: match[1] ?? match[2] ?? match[3] ?? '', restIsEmpty: rest === '' || rest.startsWith('#') };
}
