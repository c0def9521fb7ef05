/** Shows a view of a small workspace, and looks things up in it. */
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import type { MarkupElement, MarkupNode } from '../../server/src/base/markup.ts';
import type { View, ViewKind, ViewRequest } from '../../server/src/views/view.ts';
import { cursorIn, FENNMOOR, SITE } from '../features/fennmoor.ts';
import { type Marked, openAt } from '../features/marked-files.ts';

export const SITE_FILE = 'fennmoor.dewsite.yaml';

/** The small site with the cursor at some words. */
export function fennmoorAt(words: string, site = SITE): Marked {
  return openAt(SITE_FILE, cursorIn(site, words), FENNMOOR);
}

export function requestOf(marked: Marked, inputs: Readonly<Record<string, string>> = {}): ViewRequest {
  const { analysis, offset, workspace } = marked;
  return { analysis, offset, workspace, inputs: new Map(Object.entries(inputs)) };
}

export function show(kind: ViewKind, marked: Marked, inputs: Readonly<Record<string, string>> = {}): View {
  return kind.show(requestOf(marked, inputs));
}

export function elementsNamed(nodes: readonly MarkupNode[], name: string): readonly MarkupElement[] {
  return nodes.flatMap((node) => {
    if (typeof node === 'string') return [];
    const below = elementsNamed(node.children, name);
    return node.name === name ? [node, ...below] : below;
  });
}

/** All that is written below, without the blanks between elements. */
export function wordsOf(node: MarkupNode): string {
  return typeof node === 'string' ? node : node.children.map(wordsOf).join('');
}

/** The cells of a table, row by row, as they read. */
export function cellsOf(table: MarkupElement | undefined): readonly (readonly string[])[] {
  const rows = table === undefined ? [] : elementsNamed([table], 'tr');
  return rows.map((row) => row.children.map(wordsOf));
}

/** The items of the list behind a heading, or the words that stand there instead. */
export function listBehind({ body }: View, heading: string): readonly string[] {
  const at = body.findIndex((node) => /^h\d$/.test(node.name) && wordsOf(node) === heading);
  const next = at < 0 ? undefined : body[at + 1];
  if (next === undefined) throw new Error(`nothing stands behind “${heading}”`);
  return next.name === 'ul' ? next.children.map(wordsOf) : [wordsOf(next)];
}

export function subjectsOf({ findings }: Analysis): readonly string[] {
  return findings.map(({ rule, subject }) => `${subject} ${rule}`);
}
