/**
 * Elements of HTML and SVG as a tree, and the one place that writes them. A string in the tree is always text: what
 * comes from a file can become no element and no attribute.
 */
export interface MarkupElement {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly MarkupNode[];
}

export type MarkupNode = MarkupElement | string;

/** True writes an attribute without a value; false and undefined write none. Numbers keep two decimals. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Elements of HTML that have no end tag. */
const VOID = new Set(['br', 'col', 'hr', 'input', 'meta', 'wbr']);

export function element(
  name: string,
  attributes: Attributes = {},
  children: readonly MarkupNode[] = [],
): MarkupElement {
  return { name, attributes, children };
}

/** The tree as HTML, which is also XML where the root is an SVG drawing. */
export function writeMarkup(node: MarkupNode): string {
  if (typeof node === 'string') return escapeMarkup(node);
  const { name, attributes, children } = node;
  const written = Object.entries(attributes).map(([key, value]) => writeAttribute(key, value));
  const start = `<${name}${written.join('')}>`;
  return VOID.has(name) ? start : `${start}${children.map(writeMarkup).join('')}</${name}>`;
}

function writeAttribute(key: string, value: Attributes[string]): string {
  if (value === undefined || value === false) return '';
  if (typeof value === 'number') return ` ${key}="${roundedNumber(value)}"`;
  return ` ${key}="${value === true ? '' : escapeMarkup(value)}"`;
}

/** A number as drawings write it: a hundredth of a pixel is finer than any screen. */
export function roundedNumber(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Characters that XML does not allow, halves of surrogate pairs among them, are shown as unknown ones. */
function escapeMarkup(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}
