/** What is found, where, and when it is found anew. */
import * as vscode from 'vscode';
import {
  equal,
  exists,
  findingOf,
  KIT_FILE,
  matches,
  noFindingOf,
  open,
  rewrite,
  SITE_FILE,
  workspaceFile,
  write,
} from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const FINDING_CHECKS: Checks<'findings'> = {
  async 'a finding carries source, severity, rule name and a link to the page of its rule'() {
    const site = await open(SITE_FILE);
    const { source, severity, code, range } = await findingOf(site, 'air-temperature-missing');
    equal(source, 'dewright');
    equal(severity, vscode.DiagnosticSeverity.Error);
    equal(typeof code === 'object' && code.target.toString(), 'dewright-rule:/air-temperature-missing.md');
    equal(site.getText(range), 'relative-humidity');
  },

  async 'the page of a rule is a Markdown file that cannot be changed, and an unknown rule has none'() {
    const page = vscode.Uri.parse('dewright-rule:/air-temperature-missing.md');
    const shown = await vscode.workspace.openTextDocument(page);
    equal(shown.languageId, 'markdown');
    matches(shown.getText(), /air-temperature-missing/);
    equal(vscode.workspace.fs.isWritableFileSystem(page.scheme), false);
    equal(await exists(page), true);
    equal(await exists(vscode.Uri.parse('dewright-rule:/no-such-rule.md')), false);
  },

  async 'a kit changed on disk refreshes the findings of the sites that use it'() {
    const site = await open(SITE_FILE);
    await findingOf(site, 'air-temperature-unassigned');
    const heaters = /^ *heater:.*\n/gm;
    const kit = await rewrite(KIT_FILE, (text) => text.replace(heaters, ''));
    equal(site.getText((await findingOf(site, 'heater-absent')).range), 'continuous');
    await rewrite(KIT_FILE, () => kit);
    await noFindingOf(site, 'heater-absent');
  },

  async 'a file that is not open has its findings too, and loses them when it goes'() {
    const uri = workspaceFile('closed.dewsite.yaml');
    await write('closed.dewsite.yaml', 'dewright: 1\nsite: { id: closed, title: Never opened, altitude: 210 }\n');
    const { range } = await findingOf({ uri }, 'value-unreadable');
    equal(range.start.line, 1);
    equal(
      vscode.workspace.textDocuments.some((document) => document.uri.toString() === uri.toString()),
      false,
    );
    await vscode.workspace.fs.delete(uri);
    await noFindingOf({ uri }, 'value-unreadable');
  },
};
