/** What is shown of a file to whoever reads it. */
import * as vscode from 'vscode';
import {
  ask,
  equal,
  findingOf,
  matches,
  open,
  placeOf,
  SITE_FILE,
  until,
  whole,
  workspaceFile,
  write,
} from './editor-steps.ts';
import type { Checks } from './facts.ts';
import { VISITS } from './visits.ts';

export const READING_CHECKS: Checks<'reading'> = {
  async 'a hover on a point shows its highest dew point'() {
    matches(await hoverText('K2-MT-101'), /Highest dew point: \*\*74\.9 °C\*\*/);
  },

  async 'a hover on a report shows what its uncertainty is made of'() {
    matches(
      await hoverText('dew-point'),
      /Uncertainty of the dew point.*\n[\s\S]*\| accuracy of the humidity sensor \|/,
    );
  },

  async 'a hover on a plan of checks shows what the visits found, with a picture'() {
    const files = Object.entries(VISITS);
    for (const [path, text] of files) await write(path, text);
    const seen = /!\[\]\(data:image\/svg\+xml,[\s\S]*\| 58\.5 °C \|[\s\S]*The drift is 0\.25 ± /;
    await until('the history in the hover', async () => seen.test(await hoverText('checks:')) || undefined);
    for (const [path] of files) await vscode.workspace.fs.delete(workspaceFile(path));
  },

  async 'a dew point stands beside the humidity of a space'() {
    const site = await open(SITE_FILE);
    const hints = await ask<vscode.InlayHint[]>(site, 'executeInlayHintProvider', whole(site));
    const humidity = placeOf(site, '35 .. 88 %RH').translate(0, '35 .. 88 %RH'.length);
    const hint = hints.find(({ position }) => position.isEqual(humidity));
    matches(String(hint?.label), /^dew point .* 74\.9 °C$/);
  },

  async 'a line above a point tells its state, and leads to the place that it speaks of'() {
    const site = await open(SITE_FILE);
    const { range } = await findingOf(site, 'air-temperature-missing');
    const lenses = await ask<vscode.CodeLens[]>(site, 'executeCodeLensProvider', 100);
    const point = placeOf(site, 'K2-MT-101').line;
    const ofPoint = lenses.filter((lens) => lens.range.start.line === point);
    const titles = ofPoint.map(({ command }) => command?.title ?? '').join('; ');
    matches(titles, /At most .* %RH at the sensor; Uncertainty of the .*; \d+ error/);
    const ofFindings = ofPoint.find((lens) => /error/.test(lens.command?.title ?? ''));
    const { command = '', arguments: words = [] } = ofFindings?.command ?? {};
    await vscode.commands.executeCommand(command, ...words);
    equal(vscode.window.activeTextEditor?.selection.start, range.start);
  },

  async 'numbers, units, quantities and names are coloured apart'() {
    const site = await open(SITE_FILE);
    const legend = await ask<vscode.SemanticTokensLegend>(site, 'provideDocumentSemanticTokensLegend');
    const tokens = await ask<vscode.SemanticTokens>(site, 'provideDocumentSemanticTokens');
    const kinds = new Map(decoded(site, tokens, legend));
    equal(kinds.get('55 .. 78'), 'number');
    equal(kinds.get('degC'), 'keyword');
    equal(kinds.get('relative-humidity'), 'enumMember');
    equal(kinds.get('hp-heated'), 'variable');
  },
};

/** The text of the hovers where the site first says this. */
async function hoverText(words: string): Promise<string> {
  const site = await open(SITE_FILE);
  const hovers = await ask<vscode.Hover[]>(site, 'executeHoverProvider', placeOf(site, words));
  const parts = hovers.flatMap(({ contents }) => contents);
  return parts.map((part) => (typeof part === 'string' ? part : part.value)).join('\n');
}

/** A token is five numbers: lines and columns behind the one before, its length, its type, its modifiers. */
function decoded(
  document: vscode.TextDocument,
  { data }: vscode.SemanticTokens,
  { tokenTypes }: vscode.SemanticTokensLegend,
): (readonly [words: string, kind: string | undefined])[] {
  let start = new vscode.Position(0, 0);
  const tokens: (readonly [string, string | undefined])[] = [];
  for (let index = 0; index < data.length; index += 5) {
    const [lines = 0, columns = 0, length = 0, type = 0] = data.subarray(index, index + 4);
    start = new vscode.Position(start.line + lines, lines === 0 ? start.character + columns : columns);
    const words = document.getText(new vscode.Range(start, start.translate(0, length)));
    tokens.push([words, tokenTypes[type]]);
  }
  return tokens;
}
