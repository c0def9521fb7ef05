/** How a pack looks: on screen in the reader's own light or dark, in print always light, on A4 with its pages numbered. */
import { PICTURE_STYLE } from '../pictures/picture-style.ts';
import type { PackDocument } from './document.ts';

export function packStyle({ title, revision }: Pick<PackDocument, 'title' | 'revision'>): string {
  return `${PICTURE_STYLE}\n${STYLE}\n${pageStyle(title, revision)}`;
}

const STYLE = `
:root { color-scheme: light dark; --rule: #8a8a8a; --tint: #f1f4f6; --caution: #8a3b00; --caution-tint: #fff4e5; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #e6e6e6; --paper: #1e1e1e; --quiet: #b4b4b4; --rule: #7d7d7d; --tint: #2a2d2e; --caution: #ffb366; --caution-tint: #33261a; }
  figure { background: #ffffff; border-radius: 4px; }
}
@media print { :root { color-scheme: light; } nav { display: none; } }
html { background: var(--paper); color: var(--ink); font: 15px/1.45 system-ui, "Segoe UI", "Liberation Sans", sans-serif; }
body { max-width: 62rem; margin: 0 auto; padding: 1.5rem; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 0.6rem; }
h2 { font-size: 1.4rem; margin: 2.2rem 0 0.5rem; padding-top: 0.4rem; border-top: 2px solid var(--ink); }
h3 { font-size: 1.1rem; margin: 1.4rem 0 0.3rem; }
h1, h2, h3, caption, thead { break-after: avoid; }
.page > h2 { border-top: 0; }
p { margin: 0.4rem 0; }
ul { margin: 0.4rem 0; padding-left: 1.3rem; }
nav ul { columns: 2; }
a { color: inherit; }
table { width: 100%; border-collapse: collapse; margin: 0.9rem 0; font-size: 0.93rem; }
caption { caption-side: top; text-align: left; font-weight: 600; padding-bottom: 0.2rem; }
th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.5rem 0.25rem 0; border-bottom: 1px solid var(--rule); overflow-wrap: break-word; }
thead th { border-bottom: 2px solid var(--rule); color: var(--quiet); font-weight: 600; }
tbody th { font-weight: 500; }
tbody th [data-words] { white-space: nowrap; }
.names th { width: 36%; }
main > section:last-child ul { columns: 2; font-size: 0.85rem; }
thead { display: table-header-group; }
tr, figure, .caution, .together { break-inside: avoid; }
tbody tr:first-child { break-before: avoid; }
figure { margin: 0.9rem 0; padding: 0.4rem; }
figcaption { font-size: 0.87rem; color: #5c5c5c; }
.caution { border-left: 4px solid var(--caution); background: var(--caution-tint); padding: 0.3rem 0.8rem; margin: 0.9rem 0; }
.drawing .spot { display: none; }
[data-fact] { font-weight: 600; white-space: nowrap; }
[data-stated] { white-space: nowrap; }
`.trim();

function pageStyle(title: string, revision: string): string {
  const box = 'font: 8pt system-ui, "Liberation Sans", sans-serif; color: #5c5c5c;';
  return `
@page {
  size: A4; margin: 18mm 15mm 18mm;
  @top-left { content: ${cssString(title)}; ${box} }
  @bottom-left { content: ${cssString(revision)}; ${box} }
  @bottom-right { content: "page " counter(page) " of " counter(pages); ${box} }
}
@media print {
  html { font-size: 10pt; background: #ffffff; }
  body { max-width: none; padding: 0; }
  .page { break-before: page; }
  .page > h2 { margin-top: 0; padding-top: 0; }
  figure { padding: 0; }
  .drawing { max-height: 125mm; }
  * { print-color-adjust: exact; }
}`.trim();
}

/** Every character that could end the string, or the style sheet, is written by its number. */
function cssString(text: string): string {
  return `"${text.replace(/[^\p{L}\p{N} .,:()/-]/gu, (character) => `\\${character.codePointAt(0)?.toString(16)} `)}"`;
}
