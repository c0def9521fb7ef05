/** Looks things up in a drawing, as its tree of elements. */
import type { MarkupElement, MarkupNode } from '../../server/src/base/markup.ts';

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

export function only<Value>(values: readonly Value[]): Value {
  const [value, ...others] = values;
  if (value === undefined || others.length > 0) throw new Error(`expected one, there are ${values.length}`);
  return value;
}
