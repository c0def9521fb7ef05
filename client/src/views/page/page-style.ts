/** How the pages of views look: the editor's own colours and fonts, which it gives every page. */
export const PAGE_STYLE = `
body { display: flex; flex-direction: column; min-height: 100vh; min-width: min-content; box-sizing: border-box; margin: 0; padding: 8px 12px 0; color: var(--vscode-foreground); background: var(--vscode-editor-background); }
main { flex: 1; }
header { position: fixed; top: 8px; right: 12px; display: flex; gap: 2px; z-index: 1; }
header[hidden] { display: none; }
h1 { margin: 0 0 4px; padding-right: 150px; font-size: 1.25em; font-weight: 600; }
h2 { margin: 16px 0 4px; font-size: 1.05em; font-weight: 600; }
h3 { margin: 8px 0 2px; font-size: 1em; font-weight: 600; }
p { margin: 4px 0; }
button, select, input { font: inherit; color: var(--vscode-input-foreground); background: var(--vscode-input-background); border: 1px solid var(--vscode-contrastBorder, var(--vscode-widget-border, transparent)); border-radius: 2px; padding: 2px 6px; }
button { min-width: 28px; color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground); cursor: pointer; }
button:hover { background: var(--vscode-button-secondaryHoverBackground); }
:focus-visible { outline: 1px solid var(--vscode-focusBorder); outline-offset: 1px; }
.controls { display: flex; flex-wrap: wrap; gap: 12px; align-items: baseline; margin: 4px 0; }
table { border-collapse: collapse; }
th, td { padding: 3px 10px 3px 0; text-align: left; vertical-align: top; border-bottom: 1px solid var(--vscode-widget-border, #8884); }
table[data-sorts] th { position: sticky; top: 0; background: var(--vscode-editor-background); }
th button { background: none; border: none; padding: 0; font-weight: 600; color: inherit; }
th[aria-sort=ascending] button::after { content: ' ↑'; }
th[aria-sort=descending] button::after { content: ' ↓'; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
:is(td, li, p, a)[data-file], :is(td, li, p) [data-file] { color: var(--vscode-textLink-foreground); cursor: pointer; }
:is(td, li, p) [data-file]:hover { text-decoration: underline; }
.whole, table[data-sorts] td.number { white-space: nowrap; }
.beyond { font-weight: 600; color: var(--limit); }
.summary { position: sticky; top: 0; margin: 0; padding: 4px 0; background: var(--vscode-editor-background); }
ul { margin: 4px 0; padding-left: 18px; }
fieldset { display: grid; grid-template-columns: repeat(auto-fill, minmax(260px, 1fr)); gap: 6px 16px; margin: 8px 0; padding: 4px 10px 8px; border: 1px solid var(--vscode-widget-border, #8884); }
legend { font-weight: 600; }
.field label { display: flex; justify-content: space-between; align-items: baseline; gap: 8px; }
.field :is(input, select) { flex: none; width: 130px; box-sizing: border-box; }
.field.changed label span { font-weight: 600; }
.was { display: block; text-align: right; opacity: 0.85; }
.problem { display: block; color: var(--vscode-errorForeground); }
[aria-invalid] { border-color: var(--vscode-inputValidation-errorBorder, currentColor); }
button:disabled { opacity: 0.5; cursor: default; }
svg[data-reads] { cursor: crosshair; touch-action: none; }
.spot { fill: none; stroke: var(--ink); visibility: hidden; }
svg:focus-visible .spot[transform] { visibility: visible; }
footer { position: sticky; bottom: 0; min-height: 2.8em; padding: 4px 0; background: var(--vscode-editor-background); border-top: 1px solid var(--vscode-widget-border, #8884); }
output { white-space: pre-line; font-variant-numeric: tabular-nums; }
`;
