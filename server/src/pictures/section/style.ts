/** What sections look like besides what all drawings share: metal, insulation, water, temperatures, dimensions. */

/** From Okabe and Ito's blue over a pale ground to their vermilion, which every colour vision tells apart. */
const HEAT = [
  '#0072b2',
  '#3c90bb',
  '#78afc5',
  '#b4cdce',
  '#f0ebd7',
  '#e9c8a1',
  '#e3a56c',
  '#dc8136',
  '#d55e00',
] as const;

/** How many temperatures look different. */
export const HEAT_STEPS = HEAT.length;

const HEAT_RULES = HEAT.map(
  (colour, step) => `.drawing .heat-${step + 1} { fill: ${colour}; shape-rendering: crispEdges; }`,
).join('\n');

export const SECTION_STYLE = `
${HEAT_RULES}
.drawing .metal { fill: var(--quiet); fill-opacity: 0.55; stroke: var(--ink); stroke-width: 0.8; }
.drawing .insulation { fill: var(--quiet); fill-opacity: 0.14; stroke: var(--quiet); stroke-width: 0.6; }
.drawing .collar { fill: var(--quiet); fill-opacity: 0.3; stroke: var(--ink); stroke-width: 0.8; stroke-dasharray: 3 2; }
.drawing .surface { stroke: var(--ink); stroke-width: 1.4; }
.drawing .edge, .drawing .head { fill: none; stroke: var(--ink); stroke-width: 0.7; }
.drawing .head.heated { stroke-width: 2.4; }
.drawing .centre { stroke: var(--ink); stroke-width: 1; stroke-dasharray: 10 3 2 3; }
.drawing path.wet { fill: none; stroke: var(--colour-1); stroke-width: 1.8; }
.drawing text.wet { fill: var(--colour-1); }
.drawing .tick, .drawing .measure { stroke: var(--ink); stroke-width: 0.8; }
.drawing .extension { stroke: var(--quiet); stroke-width: 0.6; }
.drawing .scale { stroke: var(--ink); stroke-width: 3; }
.drawing .flow { stroke: var(--colour-3); stroke-width: 2.4; }
.drawing .flow-head { fill: var(--colour-3); }
`.trim();
