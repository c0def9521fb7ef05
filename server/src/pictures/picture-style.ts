/**
 * How drawings look. Light is the default, for documents and print; the editor's theme sets the others by the class it
 * gives the body of its pages. The colours are those of Okabe and Ito ("Color Universal Design", 2008), which people
 * with any colour vision tell apart; dashes and labels say the same again, so that no colour alone carries meaning.
 */

import { CHART_STYLE } from './chart/style.ts';
import { BUDGET_STYLE } from './plots/budget-style.ts';
import { SECTION_STYLE } from './section/style.ts';

const SERIES = {
  light: ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#a67300', '#2c7fb0'],
  dark: ['#56b4e9', '#e69f00', '#00c08b', '#cc79a7', '#f0e442', '#e8743b'],
} as const;

const DASHES = ['none', '7 3', '2 3', '9 3 2 3', '12 4', '4 2 1 2 1 2'] as const;

/** How many series look different; the next one looks like the first again. */
const SERIES_COUNT = DASHES.length;

/** The class of the n-th of several things that are shown alike, from 0. */
export function seriesClass(index: number): string {
  return `series-${(index % SERIES_COUNT) + 1}`;
}

function palette(colours: readonly string[], ink: string, quiet: string, paper: string, limit: string): string {
  const series = colours.map((colour, index) => `--colour-${index + 1}: ${colour};`).join(' ');
  return `--ink: ${ink}; --quiet: ${quiet}; --paper: ${paper}; --limit: ${limit}; ${series}`;
}

const SERIES_RULES = DASHES.map(
  (dash, index) => `.series-${index + 1} { --series: var(--colour-${index + 1}); --dash: ${dash}; }`,
).join('\n');

/**
 * The classes: `axis`, `grid` and `limit` for lines; `area`, `bar`, `curve` and `dot` for what belongs to a series,
 * together with its `series-N`; `title`, `quiet`, `end` and `middle` for texts; `here` for what the cursor is in.
 */
export const PICTURE_STYLE = `
:root, .drawing { ${palette(SERIES.light, '#1b1b1b', '#5c5c5c', '#ffffff', '#b22f00')} }
.vscode-dark, .vscode-dark .drawing { ${palette(SERIES.dark, '#e6e6e6', '#a6a6a6', '#1e1e1e', '#ff8a65')} }
.vscode-high-contrast, .vscode-high-contrast .drawing { ${palette(SERIES.dark, '#ffffff', '#ffffff', '#000000', '#ff8a65')} }
.vscode-high-contrast-light, .vscode-high-contrast-light .drawing { ${palette(SERIES.light, '#000000', '#000000', '#ffffff', '#9a2800')} }
${SERIES_RULES}
.drawing { display: block; width: 100%; height: auto; font: 12px system-ui, sans-serif; fill: var(--ink); }
.drawing .axis { fill: none; stroke: var(--ink); stroke-width: 1; }
.drawing .grid { fill: none; stroke: var(--quiet); stroke-width: 0.6; stroke-opacity: 0.45; }
.drawing .limit { fill: none; stroke: var(--limit); stroke-width: 1.6; stroke-dasharray: 6 4; }
.drawing .area { fill: var(--series); fill-opacity: 0.14; stroke: var(--series); stroke-width: 1.6; stroke-dasharray: var(--dash); }
.drawing .bar { fill: var(--series); fill-opacity: 0.75; stroke: var(--series); stroke-width: 1; }
.drawing .curve { fill: none; stroke: var(--series, var(--ink)); stroke-width: 1.8; stroke-dasharray: var(--dash, none); }
.drawing .dot { fill: var(--paper); stroke: var(--series, var(--ink)); stroke-width: 1.8; }
.drawing .title { font-weight: 600; }
.drawing .quiet { fill: var(--quiet); }
${CHART_STYLE}
${SECTION_STYLE}
${BUDGET_STYLE}
.drawing .end { text-anchor: end; }
.drawing .middle { text-anchor: middle; }
.drawing .here .area { fill-opacity: 0.34; stroke-width: 2.8; }
.drawing text { paint-order: stroke; stroke: var(--paper); stroke-width: 3px; stroke-linejoin: round; }
.drawing [data-file] { cursor: pointer; }
.drawing [tabindex]:focus-visible { outline: 2px solid var(--ink); outline-offset: 1px; }
`.trim();
