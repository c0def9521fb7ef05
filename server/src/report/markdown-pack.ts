/** A document as Markdown (CommonMark with the tables of GitHub). Pictures are left out, and said to be. */
import type { Block, PackDocument, Section, Table, Text, TextPart } from './document.ts';

export function packMarkdown({ title, opening, sections }: PackDocument): string {
  const blocks = [
    `# ${escaped(title)}`,
    ...opening.flatMap(blockText),
    ...sections.flatMap((one) => sectionText(one, 2)),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function sectionText({ title, blocks, sections = [] }: Section, level: number): readonly string[] {
  return [
    `${'#'.repeat(level)} ${inline(title)}`,
    ...blocks.flatMap(blockText),
    ...sections.flatMap((inner) => sectionText(inner, level + 1)),
  ];
}

function blockText(block: Block): readonly string[] {
  switch (block.kind) {
    case 'paragraph':
      return [atStart(inline(block.text))];
    case 'caution':
      return [['> **Caution**', ...block.lines.map((line) => `> ${inline(line)}`)].join('\n>\n')];
    case 'list':
      return [block.items.map((item) => `- ${atStart(inline(item))}`).join('\n')];
    case 'table':
      return [`**${escaped(block.caption)}**`, tableText(block)];
    case 'picture':
      return [`*${escaped(block.caption)} The picture is in the HTML and the PDF of this pack.*`];
  }
}

/** Columns as wide as their widest cell, so that the text reads as a table too. */
function tableText({ head, rows }: Table): string {
  // Markdown has no table without a head.
  const names = head.length > 0 ? head : (rows[0] ?? []).map(() => '');
  const cells = [names.map(escaped), ...rows.map((row) => row.map(inline))];
  const widths = names.map((_, column) => Math.max(3, ...cells.map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    `| ${widths.map((width, column) => (row[column] ?? '').padEnd(width)).join(' | ')} |`;
  const [first = [], ...others] = cells;
  return [line(first), line(widths.map((width) => '-'.repeat(width))), ...others.map(line)].join('\n');
}

function inline(text: Text): string {
  return text.map(partText).join('');
}

function partText(part: TextPart): string {
  if (typeof part === 'string') return escaped(part);
  switch (part.kind) {
    case 'fact':
      return `**${escaped(part.text)}**`;
    case 'told':
      return inline(part.parts);
    default:
      return escaped(part.text);
  }
}

/** What would turn into markup, in the middle of a line; line ends would end a cell or a paragraph. */
function escaped(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\`*_[\]<>|~&$]/g, (character) => `\\${character}`);
}

/** What would turn into a heading, a list, a quote or a rule at the start of a line. */
function atStart(line: string): string {
  return line.replace(/^\s*([-+#=]|\d+[.)])/, (start) => start.replace(/[-+#=.)]/, (character) => `\\${character}`));
}
