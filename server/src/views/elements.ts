/** The elements that views are put together from. */
import { type Attributes, element, type MarkupElement, type MarkupNode } from '../base/markup.ts';
import { type Place, placeAttributes } from '../pictures/svg.ts';

export function heading(level: 1 | 2 | 3, text: string): MarkupElement {
  return element(`h${level}`, {}, [text]);
}

export function paragraph(...children: readonly MarkupNode[]): MarkupElement {
  return element('p', {}, children);
}

export function list(sentences: readonly string[]): MarkupElement {
  return element(
    'ul',
    {},
    sentences.map((sentence) => element('li', {}, [sentence])),
  );
}

/** Words that lead to a place in a file. */
export function linkTo(place: Place, text: string): MarkupElement {
  return element('span', placeAttributes(place, text), [text]);
}

export interface Column {
  readonly title: string;
  readonly isNumber?: boolean;
}

export interface Cell {
  readonly content: readonly MarkupNode[];
  /** What the column is sorted by, where that is not its text. */
  readonly value?: number;
  /** `whole` is not broken into lines, `beyond` is more than it should be. */
  readonly look?: 'whole' | 'beyond';
  /** What is said when it is pointed at. */
  readonly hint?: string;
}

export interface Table {
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** What a screen reader calls it. */
  readonly title: string;
  /** Of a table that sorts by its headings; unique in the view. */
  readonly id?: string;
}

export function table({ columns, rows, title, id }: Table): MarkupElement {
  const sorts = id === undefined ? {} : { id, 'data-sorts': true };
  const heads = columns.map(({ title: text, isNumber }) => {
    const name = id === undefined ? [text] : [element('button', { type: 'button' }, [text])];
    return element('th', { scope: 'col', class: isNumber === true ? 'number' : undefined }, name);
  });
  const body = rows.map((cells) =>
    element(
      'tr',
      {},
      cells.map((cell, index) => element('td', cellAttributes(cell, columns[index]), cell.content)),
    ),
  );
  return element('table', { ...sorts, 'aria-label': title }, [
    element('thead', {}, [element('tr', {}, heads)]),
    element('tbody', {}, body),
  ]);
}

function cellAttributes({ value, look, hint }: Cell, column: Column | undefined): Attributes {
  const names = [column?.isNumber === true ? 'number' : '', look ?? ''].filter((name) => name !== '').join(' ');
  return {
    class: names === '' ? undefined : names,
    'data-value': value === undefined ? undefined : String(value),
    title: hint,
  };
}

export function textCell(text: string): Cell {
  return { content: [text] };
}

/** A value, a name or a date, which is not broken into lines. */
export function wholeCell(text: string): Cell {
  return { content: [text], look: 'whole' };
}
