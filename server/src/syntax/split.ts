/**
 * Splits a file into parts at the lines that start a top-level key or an entry of a map such as `points`.
 *
 * YAML demands that whatever continues a value inside a block map stands deeper than the map's keys. A line that
 * looks like a key at the very indentation of a map's keys therefore starts a new entry in every legal file,
 * whatever quote, bracket or block scalar was open above. In a file that is not legal yet, because somebody is
 * typing, the damage ends at the same line. What this reasoning does not cover is not split at all.
 */
export interface Stretch {
  readonly path: readonly string[];
  readonly start: number;
  readonly end: number;
}

/** A plain word or a closed quoted text, then a colon. */
const KEY =
  /^(?:"((?:[^"\\]|\\.)*)"|'((?:[^']|'')*)'|([^\s"'#&*!|>%@`{}[\],?:-][^\s:#]*(?:[ :#][^\s:#]+)*|-[^\s:#]+))[ \t]*:(?=[ \t]|$)/;
const MARKER = /^(?:---|\.\.\.)(?=[ \t]|$)|^%/;
const EXPLICIT_KEY = /^\?(?=[ \t]|$)/;

interface Line {
  readonly start: number;
  readonly indent: number;
  readonly content: string;
}

/**
 * @param text the whole file
 * @param entryKeys the top-level keys whose entries are parts of their own
 * @returns stretches that cover the text without gaps, or one with an empty path where the file cannot be split
 */
export function splitFile(text: string, entryKeys: ReadonlySet<string>): readonly Stretch[] {
  const whole = [{ path: [], start: 0, end: text.length }];
  const starts: { path: readonly string[]; start: number }[] = [];
  let entryMap: { readonly key: string; indent: number | undefined } | undefined;
  for (const line of contentLines(text)) {
    if (line.indent === 0) {
      if (MARKER.test(line.content) || EXPLICIT_KEY.test(line.content)) return whole;
      const key = keyOf(line.content);
      if (key === undefined) {
        if (starts.length === 0) return whole;
        continue;
      }
      starts.push({ path: [key.name], start: line.start });
      entryMap = entryKeys.has(key.name) && key.restIsEmpty ? { key: key.name, indent: undefined } : undefined;
      continue;
    }
    if (starts.length === 0) return whole;
    if (entryMap === undefined) continue;
    entryMap.indent ??= line.indent;
    if (line.indent !== entryMap.indent) continue;
    if (EXPLICIT_KEY.test(line.content)) return whole;
    const key = keyOf(line.content);
    if (key !== undefined) starts.push({ path: [entryMap.key, key.name], start: line.start });
    else if (starts.at(-1)?.path.length === 1) entryMap = undefined;
  }
  if (starts.length === 0) return whole;
  return starts.map(({ path, start }, index) => ({
    path,
    start: index === 0 ? 0 : start,
    end: starts[index + 1]?.start ?? text.length,
  }));
}

/** The lines that hold more than space and comments. */
function* contentLines(text: string): Generator<Line> {
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (start < text.length) {
    const newline = text.indexOf('\n', start);
    const end = newline < 0 ? text.length : newline;
    let at = start;
    while (at < end && text.charCodeAt(at) === 32) at++;
    const first = text.charCodeAt(at);
    const blank = at === end || first === 13 || first === 35;
    if (!blank) yield { start, indent: at - start, content: text.slice(at, end) };
    start = end + 1;
  }
}

function keyOf(content: string): { readonly name: string; readonly restIsEmpty: boolean } | undefined {
  const match = KEY.exec(content);
  if (match === null) return undefined;
  const rest = content.slice(match[0].length).trim();
  return { name: match[1] ?? match[2] ?? match[3] ?? '', restIsEmpty: rest === '' || rest.startsWith('#') };
}
