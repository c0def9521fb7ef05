/** How a file is built, for whoever looks for a place in it. */
import * as vscode from 'vscode';
import { ask, equal, open, pathOf, placeOf, SITE_FILE } from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const STRUCTURE_CHECKS: Checks<'structure'> = {
  async 'the outline shows sections, points and their parts'() {
    const site = await open(SITE_FILE);
    const sections = await ask<vscode.DocumentSymbol[]>(site, 'executeDocumentSymbolProvider');
    equal(namesIn(sections), ['dewright', 'site', 'spaces', 'points']);
    const points = sections.find(({ name }) => name === 'points')?.children ?? [];
    equal(namesIn(points), ['K2-MT-101', 'K2-MT-102']);
    equal(namesIn(points[0]?.children ?? []), ['humidity-probe', 'reports', 'supply', 'checks']);
  },

  async 'a point is found by its title in the whole workspace'() {
    const found = await vscode.commands.executeCommand<vscode.SymbolInformation[]>(
      'vscode.executeWorkspaceSymbolProvider',
      'off the load',
    );
    const [point] = found.filter(({ containerName }) => containerName.startsWith('Kiln 2, air off the load'));
    equal(point?.name, 'K2-MT-102');
    equal(point && pathOf(point.location.uri), SITE_FILE);
  },

  async 'a point can be folded'() {
    const site = await open(SITE_FILE);
    const folds = await ask<vscode.FoldingRange[]>(site, 'executeFoldingRangeProvider');
    const first = placeOf(site, 'K2-MT-101').line;
    const last = placeOf(site, 'K2-MT-102').line - 1;
    const [fold] = folds.filter(({ start }) => start === first);
    equal([fold?.start, fold?.end], [first, last]);
  },

  async 'a selection grows from the number over the value and the point to the file'() {
    const site = await open(SITE_FILE);
    const place = placeOf(site, '8 K', 'K2-MT-101');
    const [selection] = await ask<vscode.SelectionRange[]>(site, 'executeSelectionRangeProvider', [place]);
    const texts: string[] = [];
    for (let each = selection; each !== undefined; each = each.parent) texts.push(site.getText(each.range));
    equal(texts.slice(0, 3), ['8', '8 K', 'rise: 8 K']);
    equal(texts.filter((text) => text.startsWith('K2-MT-101:')).length, 1);
    equal(texts.at(-1), site.getText());
  },
};

function namesIn(symbols: readonly vscode.DocumentSymbol[]): readonly string[] {
  return symbols.map(({ name }) => name);
}
