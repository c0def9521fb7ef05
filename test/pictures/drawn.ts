/** Looks things up in a drawing, as its tree of elements. */
import type { MarkupElement, MarkupNode } from '../../server/src/base/markup.ts';
import { CHARACTER_WIDTH } from '../../server/src/pictures/svg.ts';

/** Every element below with this class, in the order of the drawing. */
export function withClass(node: MarkupNode, name: string): readonly MarkupElement[] {
  if (typeof node === 'string') return [];
  const classes = String(node.attributes.class ?? '').split(' ');
  return [...(classes.includes(name) ? [node] : []), ...node.children.flatMap((child) => withClass(child, name))];
}

/** All that a reader sees written below. */
export function textOf(node: MarkupNode): string {
  return typeof node === 'string' ? node : node.children.map(textOf).join(' ');
}

/** Length of a `line` in px. */
export function lengthOf({ attributes }: MarkupElement): number {
  const at = (name: string): number => Number(attributes[name]);
  return Math.hypot(at('x2') - at('x1'), at('y2') - at('y1'));
}

/** The texts of a drawing that one of its dimension lines goes through, or an extension of one. */
export function crossedLabels(drawing: MarkupElement): readonly string[] {
  const lines = [...withClass(drawing, 'measure'), ...withClass(drawing, 'extension')];
  return textsOf(drawing).flatMap((text) => (lines.some((line) => crosses(line, boxOf(text))) ? [textOf(text)] : []));
}

function textsOf(node: MarkupNode): readonly MarkupElement[] {
  if (typeof node === 'string') return [];
  return node.name === 'text' ? [node] : node.children.flatMap(textsOf);
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of a text as wide as the drawing takes it to be; of 12 px, its letters reach 9 px above their line and 3 px below. */
function boxOf(text: MarkupElement): Box {
  const classes = String(text.attributes.class ?? '').split(' ');
  const [x, y] = [Number(text.attributes.x), Number(text.attributes.y)];
  const width = textOf(text).length * CHARACTER_WIDTH;
  const left = classes.includes('end') ? x - width : classes.includes('middle') ? x - width / 2 : x;
  return { left, top: y - 9, right: left + width, bottom: y + 3 };
}

/** Cuts off what of the line is beyond each side of the box; what is left, if anything, is inside. */
function crosses({ attributes }: MarkupElement, { left, top, right, bottom }: Box): boolean {
  const at = (name: string): number => Number(attributes[name]);
  const [x1, y1, x2, y2] = [at('x1'), at('y1'), at('x2'), at('y2')];
  let [from, to] = [0, 1];
  const sides = [
    [x1 - left, x2 - left],
    [right - x1, right - x2],
    [y1 - top, y2 - top],
    [bottom - y1, bottom - y2],
  ] as const;
  for (const [atStart, atEnd] of sides) {
    if (atStart <= 0 && atEnd <= 0) return false;
    const share = atStart / (atStart - atEnd);
    if (atStart < 0) from = Math.max(from, share);
    if (atEnd < 0) to = Math.min(to, share);
  }
  return from < to;
}

export function only<Value>(values: readonly Value[]): Value {
  const [value, ...others] = values;
  if (value === undefined || others.length > 0) throw new Error(`expected one, there are ${values.length}`);
  return value;
}
