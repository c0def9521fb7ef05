/** Turns the YAML library's nodes into ours, in the order of the text, and collects what is wrong with them. */
import {
  type Alias,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type ParsedNode,
  type Scalar,
  type YAMLMap,
  type YAMLParseError,
  type YAMLSeq,
} from 'yaml';
import type { TextRange } from '../base/text-range.ts';
import type {
  AliasNode,
  Anchor,
  Comment,
  ListNode,
  MapNode,
  PairNode,
  Part,
  ScalarNode,
  ScalarValue,
  SyntaxNode,
  SyntaxProblem,
} from './nodes.ts';
import { wordsOfYamlError } from './yaml-errors.ts';

/** More problems than this in one part help nobody. */
const MOST_PROBLEMS = 20;

export class PartBuilder {
  readonly #text: string;
  readonly #problems: SyntaxProblem[] = [];
  readonly #anchors = new Map<string, Exclude<SyntaxNode, AliasNode>>();
  readonly #open = new Set<string>();
  readonly #foreign: AliasNode[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  report(start: number, end: number, sentence: string, related?: TextRange): void {
    if (this.#problems.length >= MOST_PROBLEMS) return;
    this.#problems.push(related === undefined ? { start, end, sentence } : { start, end, sentence, related });
  }

  reportYaml(error: Pick<YAMLParseError, 'code' | 'pos' | 'message'>): void {
    const [start, end] = error.pos;
    if (this.#problems.some((known) => this.#sameLine(known.start, start))) return;
    const last = Math.min(Math.max(start, end), this.#text.length);
    this.report(Math.min(start, this.#text.length), last, wordsOfYamlError(error));
  }

  root(contents: ParsedNode | null | undefined): MapNode | undefined {
    if (contents === null || contents === undefined) return undefined;
    if (isMap(contents)) return this.#map(contents as YAMLMap.Parsed);
    if (isScalar(contents) && contents.value === null) return undefined;
    const [start, end] = contents.range;
    if (this.#problems.length === 0) {
      this.report(start, end, 'A file starts with keys such as “dewright:” and “site:”, and this is none');
    }
    return undefined;
  }

  finish(path: readonly string[], root: MapNode | undefined, acceptanceComments: readonly Comment[]): Part {
    return {
      path,
      text: this.#text,
      root,
      problems: this.#problems,
      acceptanceComments,
      anchors: this.#anchors,
      foreignAliases: this.#foreign,
    };
  }

  #sameLine(one: number, other: number): boolean {
    return !this.#text.slice(Math.min(one, other), Math.max(one, other)).includes('\n');
  }

  #node(node: ParsedNode | null): SyntaxNode {
    if (isAlias(node)) return this.#alias(node as Alias.Parsed);
    const name = node?.anchor;
    if (name !== undefined) this.#open.add(name);
    const built = this.#unnamed(node);
    if (name === undefined) return built;
    this.#open.delete(name);
    const named = { ...built, anchor: this.#anchor(name, built.start) };
    this.#anchors.set(name, named);
    return named;
  }

  #unnamed(node: ParsedNode | null): Exclude<SyntaxNode, AliasNode> {
    if (isMap(node)) return this.#map(node as YAMLMap.Parsed);
    if (isSeq(node)) return this.#list(node as YAMLSeq.Parsed);
    return this.#scalar(node as Scalar.Parsed);
  }

  #alias(node: Alias.Parsed): SyntaxNode {
    const [start, end] = node.range;
    const name = node.source;
    const alias: AliasNode = { kind: 'alias', start, end, name };
    if (this.#open.has(name)) {
      this.report(start, end, `The alias “*${name}” stands inside its own anchor`);
      return alias;
    }
    const target = this.#anchors.get(name);
    if (target !== undefined) return { ...alias, target };
    this.#foreign.push(alias);
    return alias;
  }

  #anchor(name: string, before: number): Anchor {
    const start = Math.max(0, this.#text.lastIndexOf(`&${name}`, before));
    return { name, start, end: start + name.length + 1 };
  }

  #map(map: YAMLMap.Parsed): MapNode {
    const pairs: PairNode[] = [];
    const seen = new Map<string, ScalarNode>();
    for (const item of map.items) {
      if (!isScalar(item.key)) {
        const [start, end] = item.key?.range ?? map.range;
        this.report(start, end, 'A key is one plain word here, not a list, a map or an alias');
        continue;
      }
      const key = this.#scalar(item.key as Scalar.Parsed);
      const before = pairs.at(-1);
      const whole = map.flow === true && item.value === null ? this.#joinDecimalComma(before?.value, key) : undefined;
      if (before !== undefined && whole !== undefined) {
        pairs[pairs.length - 1] = { key: before.key, value: whole };
        continue;
      }
      const first = seen.get(key.text);
      if (first !== undefined && key.text !== '<<')
        this.report(key.start, key.end, `“${key.text}” is given twice; the first one counts`, first);
      else seen.set(key.text, key);
      const value = item.value === null ? emptyScalar(key.end) : this.#node(item.value as ParsedNode);
      if (first === undefined || key.text === '<<') pairs.push({ key, value });
    }
    const flow = map.flow === true;
    const end = flow ? map.range[1] : (pairs.at(-1)?.value.end ?? map.range[1]);
    return { kind: 'map', flow, pairs, start: map.range[0], end };
  }

  /**
   * In `{humidity: 0,5 %RH}` the comma ends the value `0`, and `5 %RH` becomes a key. No key of ours starts with a
   * digit right behind a comma, so that this is read as the one value that the author typed.
   */
  #joinDecimalComma(value: SyntaxNode | undefined, key: ScalarNode): ScalarNode | undefined {
    if (value?.kind !== 'scalar' || value.anchor !== undefined || key.start !== value.end + 1) return undefined;
    const { start, textStart } = value;
    if (textStart !== start || !/\d,\d/.test(this.#text.slice(value.end - 1, key.start + 1))) return undefined;
    const text = this.#text.slice(start, key.end);
    return { kind: 'scalar', start, end: key.end, value: text, text, textStart: start };
  }

  #list(list: YAMLSeq.Parsed): ListNode {
    const items = list.items.map((item) => this.#node(item as ParsedNode));
    const flow = list.flow === true;
    const end = flow ? list.range[1] : (items.at(-1)?.end ?? list.range[1]);
    return { kind: 'list', flow, items, start: list.range[0], end };
  }

  #scalar(scalar: Scalar.Parsed): ScalarNode {
    const [start, end] = scalar.range;
    const typed = this.#text.slice(start, end);
    const value = plainValue(scalar.value);
    if (scalar.type === 'PLAIN') {
      const oneLine = !typed.includes('\n');
      // Most are texts: one string in memory then serves as both.
      const text = oneLine && value !== typed ? typed : String(value);
      return { kind: 'scalar', start, end, value, text, ...(oneLine ? { textStart: start } : {}) };
    }
    const text = typeof scalar.value === 'string' ? scalar.value : String(scalar.value ?? '');
    const straight = typed.slice(1, -1) === text;
    return { kind: 'scalar', start, end, value, text, ...(straight ? { textStart: start + 1 } : {}) };
  }
}

/** The value of a key that stands in a flow map without its colon. */
function emptyScalar(at: number): ScalarNode {
  return { kind: 'scalar', start: at, end: at, value: null, text: '' };
}

function plainValue(value: unknown): ScalarValue {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  return value === null || value === undefined ? null : String(value);
}
