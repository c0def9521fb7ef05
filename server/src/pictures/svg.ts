/** What every drawing is made of: its frame, its paths, its texts, and the places in files that its parts speak of. */
import { type Attributes, element, type MarkupElement, type MarkupNode, roundedNumber } from '../base/markup.ts';

/** A place in a file that a part of a drawing or a view speaks of. */
export interface Place {
  /** URI of the file. */
  readonly file: string;
  /** Offset in the file's text, in UTF-16 units. */
  readonly start: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What a screen reader says that it is, in one line. */
  readonly title: string;
  /** What can be seen in it, in words. */
  readonly description: string;
  readonly content: readonly MarkupNode[];
  /** `data-zooms`: it can be zoomed and moved; `data-reads`: the server says what stands at a spot of it. */
  readonly attributes?: Attributes;
}

export type XY = readonly [x: number, y: number];

/**
 * A drawing that takes the width it is given. It is named by a label and not by a `title` element, which would pop up
 * over every empty spot.
 */
export function drawing({ width, height, title, description, content, attributes = {} }: Drawing): MarkupElement {
  const frame = {
    xmlns: 'http://www.w3.org/2000/svg',
    class: 'drawing',
    viewBox: `0 0 ${roundedNumber(width)} ${roundedNumber(height)}`,
    // The parts of an `img` are hidden from screen readers, so one with stops for the focus must be a document.
    role: content.some(hasStop) ? 'graphics-document' : 'img',
    'aria-label': title,
    ...attributes,
  };
  return element('svg', frame, [element('desc', {}, [description]), ...content]);
}

export function group(attributes: Attributes, children: readonly MarkupNode[]): MarkupElement {
  return element('g', attributes, children);
}

export function line([x1, y1]: XY, [x2, y2]: XY, attributes: Attributes = {}): MarkupElement {
  return element('line', { x1, y1, x2, y2, ...attributes });
}

export function label([x, y]: XY, text: string, attributes: Attributes = {}): MarkupElement {
  return element('text', { x, y, ...attributes }, [text]);
}

export function circle([cx, cy]: XY, r: number, attributes: Attributes = {}): MarkupElement {
  return element('circle', { cx, cy, r, ...attributes });
}

/** Between two opposite corners, the upper left one first. */
export function rectangle([x, y]: XY, [right, bottom]: XY, attributes: Attributes = {}): MarkupElement {
  return element('rect', { x, y, width: right - x, height: bottom - y, ...attributes });
}

/** px that a letter takes on the average, and somewhat more: a drawing cannot measure its texts. */
export const CHARACTER_WIDTH = 7;

/** A text from a file may be of any length; a drawing cannot wrap it. */
export function shortened(text: string, characters: number): string {
  return text.length <= characters ? text : `${text.slice(0, Math.floor(characters) - 1)}…`;
}

/** A line through the points given. */
export function polyline(points: readonly XY[], attributes: Attributes = {}): MarkupElement {
  return element('path', { d: pathThrough(points), ...attributes });
}

/** The area that the points given enclose. */
export function polygon(points: readonly XY[], attributes: Attributes = {}): MarkupElement {
  return polygons([points], attributes);
}

/** Several areas as one shape. */
export function polygons(outlines: readonly (readonly XY[])[], attributes: Attributes = {}): MarkupElement {
  const closed = outlines.filter((points) => points.length > 0).map((points) => `${pathThrough(points)}Z`);
  return element('path', { d: closed.join(''), ...attributes });
}

function pathThrough(points: readonly XY[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${roundedNumber(x)} ${roundedNumber(y)}`).join('');
}

/**
 * The attributes of an element that leads to a place in a file: a click or Enter goes there, pointing at it or moving
 * the focus to it reads the label out. For drawings and for HTML.
 */
export function placeAttributes({ file, start }: Place, text: string): Attributes {
  return { 'data-file': file, 'data-start': start, tabindex: 0, role: 'link', 'aria-label': text };
}

/** The same without the places, for documents that leave the machine: they would tell where its files lie. */
export function withoutPlaces(node: MarkupElement): MarkupElement {
  const { 'data-file': _file, 'data-start': _start, tabindex: _tabindex, ...kept } = node.attributes;
  const attributes = kept['role'] === 'link' ? { ...kept, role: 'img' } : kept;
  const children = node.children.map((child) => (typeof child === 'string' ? child : withoutPlaces(child)));
  return element(node.name, attributes, children);
}

function hasStop(node: MarkupNode): boolean {
  return typeof node !== 'string' && (node.attributes['tabindex'] !== undefined || node.children.some(hasStop));
}
