/** Copies a point below itself under the next free tag; serial numbers stay with the original. */
import type { Analysis } from '../../../analysis/analysis.ts';
import type { Workspace } from '../../../analysis/workspace.ts';
import { applyEdits, type TextEdit } from '../../../base/text-range.ts';
import { removePair } from '../../../syntax/edit.ts';
import { lineEnd, lineStart, newlineOf } from '../../../syntax/lines.ts';
import type { Location } from '../../../syntax/locate.ts';
import type { MapNode, Part } from '../../../syntax/nodes.ts';
import { yamlWord } from '../../../syntax/yaml-word.ts';
import { nextFreeTag } from '../next-tag.ts';
import { type Refactoring, replacing } from './refactoring.ts';

/** On the tag of a point. A point with anchors is left alone: their names would be given twice. */
export function pointCopy(workspace: Workspace, { file }: Analysis, location: Location): readonly Refactoring[] {
  const { part, partOffset, path, step, on } = location;
  const [map, tag = ''] = path;
  if (map !== 'points' || path.length !== 2 || on !== 'key' || step?.value.kind !== 'map' || step.value.flow) return [];
  const { key, value } = step;
  const [start, end] = [lineStart(part, key.start), lineEnd(part, value.end)];
  const hasAnchor = [...part.anchors.values()].some((node) => node.start >= start && node.end <= end);
  if (hasAnchor || part.text.slice(start, key.start).trim() !== '') return [];
  const newTag = nextFreeTag(workspace, tag);
  const edits: TextEdit[] = [
    { range: { start: key.start - start, end: key.end - start }, newText: yamlWord(newTag) },
    ...serialsIn(part, value).map((edit) => ({
      ...edit,
      range: { start: edit.range.start - start, end: edit.range.end - start },
    })),
  ];
  const copy = applyEdits(part.text.slice(start, end), edits);
  const at = partOffset + end;
  const title = `Copy ${tag} as ${newTag}, without serial numbers`;
  return [replacing(file, { start: at, end: at }, `${newlineOf(part)}${copy}`, title)];
}

function serialsIn(part: Part, map: MapNode): readonly TextEdit[] {
  const own = removePair({ part, node: map }, 'serial');
  const inner = map.pairs.flatMap(({ value }) => (value.kind === 'map' ? serialsIn(part, value) : []));
  return own === undefined ? inner : [{ range: { start: own.start, end: own.end }, newText: own.newText }, ...inner];
}
