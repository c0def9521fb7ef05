/** What can be folded: maps, lists and texts over several lines, and comments that stand together. */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import { remembered } from '../../base/remembered.ts';
import type { Part, SyntaxNode } from '../../syntax/nodes.ts';
import { linesOf } from '../../syntax/part-lines.ts';

/** Lines from 0, both of them shown or hidden as a whole: the first stays. */
export interface Fold {
  readonly firstLine: number;
  readonly lastLine: number;
  readonly kind: 'value' | 'comment';
}

export function foldsOf({ tree }: ParsedFile): readonly Fold[] {
  const folds: Fold[] = [];
  for (const { part, line } of tree.parts) {
    for (const { firstLine, lastLine, kind } of foldsOfPart(part)) {
      folds.push({ firstLine: firstLine + line, lastLine: lastLine + line, kind });
    }
  }
  return [...sectionFolds(tree.parts), ...folds];
}

/** A section whose entries are parts of their own goes from its key to the last of them. */
function sectionFolds(parts: ParsedFile['tree']['parts']): readonly Fold[] {
  const folds: Fold[] = [];
  let firstLine: number | undefined;
  for (const { part, line } of parts) {
    const isEntry = part.path.length === 2;
    const start = isEntry ? part.root : part.root?.pairs.at(-1)?.key;
    if (start === undefined) continue;
    if (!isEntry) firstLine = line + linesOf(part).positionAt(start.start).line;
    else if (firstLine !== undefined) {
      const lastLine = line + linesOf(part).positionAt(part.root?.end ?? 0).line;
      if (folds.at(-1)?.firstLine === firstLine) folds.pop();
      folds.push({ firstLine, lastLine, kind: 'value' });
    }
  }
  return folds;
}

const foldsOfPart = remembered((part: Part): readonly Fold[] => {
  const folds = commentFolds(part);
  if (part.root !== undefined) valueFolds(part, part.root, folds);
  return folds;
});

function valueFolds(part: Part, node: SyntaxNode, folds: Fold[]): void {
  if (node.kind === 'list') for (const item of node.items) foldFrom(part, item.start, item, folds);
  if (node.kind === 'map') for (const { key, value } of node.pairs) foldFrom(part, key.start, value, folds);
}

function foldFrom(part: Part, start: number, value: SyntaxNode, folds: Fold[]): void {
  const lines = linesOf(part);
  const firstLine = lines.positionAt(start).line;
  const end = value.start + part.text.slice(value.start, value.end).trimEnd().length;
  const lastLine = lines.positionAt(end).line;
  if (lastLine > firstLine) folds.push({ firstLine, lastLine, kind: 'value' });
  valueFolds(part, value, folds);
}

/** A line that starts with `#` inside a text over several lines is folded with it, and here once more: no harm. */
function commentFolds({ text }: Part): Fold[] {
  const folds: Fold[] = [];
  let first: number | undefined;
  for (const [line, content] of text.split('\n').entries()) {
    if (content.trimStart().startsWith('#')) {
      first ??= line;
      if (line > first) {
        if (folds.at(-1)?.firstLine === first) folds.pop();
        folds.push({ firstLine: first, lastLine: line, kind: 'comment' });
      }
    } else first = undefined;
  }
  return folds;
}
