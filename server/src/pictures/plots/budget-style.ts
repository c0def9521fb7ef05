/** How the parts of a budget look that no other drawing has; see picture-style.ts. */
export const BUDGET_STYLE = `
.drawing .improved { stroke: var(--ink); stroke-width: 2; stroke-dasharray: 3 2; }
.drawing .guard { stroke: var(--quiet); stroke-width: 1; }
.drawing .guard-box { fill: none; stroke: var(--quiet); stroke-width: 1; }
`.trim();
