/** Checks the top level of a file, which is put together from its parts. */
import { quoted } from '../base/words.ts';
import { type Cursor, type PairCursor, TreeWalker } from '../syntax/cursor.ts';
import type { MapNode, Origin, SyntaxTree } from '../syntax/nodes.ts';
import type { ModelProblem } from './problem.ts';
import { ENTRY_KEYS, type FileKind, SCHEMAS } from './schema.ts';
import { checkStructure } from './structure.ts';
import { validatorOfRoot } from './validators.ts';

/**
 * Checks that the top-level keys are known, that the needed ones are there, and what is in them. Maps such as `points`
 * are left out: their entries are checked one by one.
 */
export function checkRoot(
  kind: FileKind,
  tree: SyntaxTree,
  topLevel: readonly PairCursor[],
  walker: TreeWalker,
  problems: ModelProblem[],
): void {
  const first = tree.parts[0]?.part;
  if (first === undefined) return;
  const { start, end } = first.root?.pairs[0]?.key ?? { start: 0, end: 0 };
  const place: Origin = { part: first, start, end };
  if (topLevel.length === 0) {
    const keys = (SCHEMAS[kind].required ?? []).map(quoted).join(' and ');
    const sentence = `The ${kind} file is empty; it needs the keys ${keys}`;
    problems.push({ rule: 'schema', origin: place, sentence, suggestions: [], subject: '' });
    return;
  }
  const node: MapNode = { kind: 'map', flow: false, start: 0, end: 0, pairs: [], ...first.root };
  const root: Cursor = { part: first, node };
  const withoutEntries: Cursor = { part: first, node: { kind: 'map', flow: true, start: 0, end: 0, pairs: [] } };
  const pairs = topLevel.map((pair) => (isEntryMap(pair, kind) ? { ...pair, value: withoutEntries } : pair));
  const context = { kind, walker: new RootWalker(node, pairs, walker), problems, subject: '' };
  checkStructure(root, place, SCHEMAS[kind], validatorOfRoot(kind), context);
}

function isEntryMap({ key, value }: PairCursor, kind: FileKind): boolean {
  const isEmpty = value.node.kind === 'scalar' && value.node.value === null;
  return ENTRY_KEYS[kind].has(key.text) && (isEmpty || value.node.kind === 'map');
}

/** Sees under the root what all parts hold. */
class RootWalker extends TreeWalker {
  readonly #root: MapNode;
  readonly #pairs: readonly PairCursor[];

  constructor(root: MapNode, pairs: readonly PairCursor[], walker: TreeWalker) {
    super(walker.foreign);
    this.#root = root;
    this.#pairs = pairs;
  }

  override pairs(map: Cursor): readonly PairCursor[] {
    return map.node === this.#root ? this.#pairs : super.pairs(map);
  }
}
