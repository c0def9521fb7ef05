/** How the parts of the moist-air chart look that no other drawing has; see picture-style.ts. */
export const CHART_STYLE = `
.drawing .alarm { fill: none; stroke: var(--limit); stroke-width: 1.6; stroke-dasharray: 9 3 2 3; }
.drawing .beyond { fill: var(--quiet); fill-opacity: 0.13; }
.drawing .density { fill: var(--ink); }
.drawing .saturation { stroke-width: 2.2; }
.drawing .shift .axis { stroke-width: 2; }
.drawing .labels { pointer-events: none; }
.drawing .arrowhead { fill: var(--ink); }
`.trim();
