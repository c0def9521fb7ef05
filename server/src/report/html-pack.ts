/** A document as one HTML file that needs nothing else: no network, no script. */
import { element, type MarkupElement, type MarkupNode, writeMarkup } from '../base/markup.ts';
import { withoutPlaces } from '../pictures/svg.ts';
import type { Block, Mark, PackDocument, Section, Table, Text } from './document.ts';
import { packStyle } from './pack-style.ts';

export function packHtml(pack: PackDocument): string {
  const { title, opening, sections } = pack;
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    writeMarkup(element('title', {}, [title])),
    `<style>\n${packStyle(pack)}\n</style>`,
  ];
  const body = element('body', {}, [
    element('header', {}, [element('h1', {}, [title]), ...opening.map(blockElement)]),
    element('nav', { 'aria-label': 'Contents' }, [
      element(
        'ul',
        {},
        sections.map((section, index) => contentsEntry(section, idOf(index))),
      ),
    ]),
    element(
      'main',
      {},
      sections.map((section, index) => sectionElement(section, idOf(index))),
    ),
  ]);
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.join('\n')}\n</head>\n${writeMarkup(body)}\n</html>\n`;
}

function idOf(index: number): string {
  return `section-${index + 1}`;
}

function contentsEntry({ title }: Section, id: string): MarkupElement {
  return element('li', {}, [element('a', { href: `#${id}` }, textNodes(title))]);
}

/** @param id of a section that the contents lead to, which is a landmark; none for a section inside another */
function sectionElement({ title, blocks, sections = [], startsPage }: Section, id?: string): MarkupElement {
  const heading = id === undefined ? undefined : `${id}-title`;
  const attributes = { id, 'aria-labelledby': heading, class: startsPage === true ? 'page' : undefined };
  return element('section', attributes, [
    element(id === undefined ? 'h3' : 'h2', { id: heading }, textNodes(title)),
    ...blocks.map(blockElement),
    ...sections.map((inner) => sectionElement(inner)),
  ]);
}

function blockElement(block: Block): MarkupElement {
  switch (block.kind) {
    case 'paragraph':
      return element('p', {}, textNodes(block.text));
    case 'caution':
      return element('div', { class: 'caution', role: 'note' }, [
        element('p', {}, [element('strong', {}, ['Caution'])]),
        ...block.lines.map((line) => element('p', {}, textNodes(line))),
      ]);
    case 'list':
      return element(
        'ul',
        {},
        block.items.map((item) => element('li', {}, textNodes(item))),
      );
    case 'table':
      return tableElement(block);
    case 'picture':
      return element('figure', {}, [sized(withoutPlaces(block.drawing)), element('figcaption', {}, [block.caption])]);
  }
}

/** No larger than it was drawn, so that its letters stay smaller than those of the text. */
function sized(drawing: MarkupElement): MarkupElement {
  const width = String(drawing.attributes['viewBox'] ?? '').split(' ')[2] ?? '';
  return element(drawing.name, { ...drawing.attributes, style: `max-width: ${width}px` }, drawing.children);
}

/** A table of no more rows is printed on one page. */
const MOST_ROWS_TOGETHER = 12;

function tableElement({ caption, head, rows }: Table): MarkupElement {
  const cell = (text: Text, index: number): MarkupElement =>
    index === 0 ? element('th', { scope: 'row' }, textNodes(text)) : element('td', {}, textNodes(text));
  const names = head.map((name) => element('th', { scope: 'col' }, [name]));
  const together = rows.length <= MOST_ROWS_TOGETHER ? 'together' : '';
  return element('table', { class: names.length === 0 ? `names ${together}` : together }, [
    element('caption', {}, [caption]),
    ...(names.length === 0 ? [] : [element('thead', {}, [element('tr', {}, names)])]),
    element(
      'tbody',
      {},
      rows.map((row) => element('tr', {}, row.map(cell))),
    ),
  ]);
}

function textNodes(text: Text): readonly MarkupNode[] {
  return text.map((part) => (typeof part === 'string' ? part : markElement(part)));
}

function markElement(mark: Mark): MarkupElement {
  switch (mark.kind) {
    case 'fact':
      return element('strong', { 'data-fact': mark.of }, [mark.text]);
    case 'corner':
      return element('span', { 'data-corner': mark.of }, [mark.text]);
    case 'stated':
      return element('span', { 'data-stated': true }, [mark.text]);
    case 'words':
      return element('span', { 'data-words': true }, [mark.text]);
    case 'told':
      return element('span', { 'data-told': true }, textNodes(mark.parts));
  }
}
