/** Runs inside the extension host with the editor's real API; bundled for it by the test outside. */
import * as vscode from 'vscode';
import { findFiles, readFile } from '../../client/src/files.ts';
import {
  apply,
  codeActions,
  equal,
  exists,
  findingOf,
  hoverText,
  matches,
  noFindingOf,
  open,
  rewrite,
  workspaceFile,
} from './in-host-editor.ts';
import { type InHostFact, type InHostResult, inHostFacts, resultMark } from './in-host-facts.ts';

const siteFile = 'fennmoor.dewsite.yaml';
const kitFile = 'kits/fennmoor.dewkit.yaml';

/** The editor calls this and waits for it. */
export async function run(): Promise<void> {
  for (const fact of inHostFacts) {
    const result: InHostResult = await checks[fact]().then(
      () => ({ fact }),
      (error: unknown) => ({ fact, failure: String(error) }),
    );
    console.log(resultMark + JSON.stringify(result));
  }
}

const checks: Readonly<Record<InHostFact, () => Promise<void>>> = {
  async 'a finding carries source, severity, rule name and a link to the page of its rule'() {
    const site = await open(siteFile);
    const { source, severity, code, range } = await findingOf(site, 'difference-in-degrees');
    equal(source, 'dewright');
    equal(severity, vscode.DiagnosticSeverity.Warning);
    equal(typeof code === 'object' && code.target.toString(), 'dewright-rule:/difference-in-degrees.md');
    equal(site.getText(range), '8 degC');
  },

  async 'the page of a rule is a Markdown file that cannot be changed, and an unknown rule has none'() {
    const page = vscode.Uri.parse('dewright-rule:/difference-in-degrees.md');
    const shown = await vscode.workspace.openTextDocument(page);
    equal(shown.languageId, 'markdown');
    matches(shown.getText(), /difference-in-degrees/);
    equal(vscode.workspace.fs.isWritableFileSystem(page.scheme), false);
    equal(await exists(page), true);
    equal(await exists(vscode.Uri.parse('dewright-rule:/no-such-rule.md')), false);
  },

  async 'a hover on a space shows numbers with units'() {
    matches(await hoverText(await open(siteFile), 'temperature: 55'), /\d °C/);
  },

  async 'the quick fix of a finding removes it'() {
    const site = await open(siteFile);
    const { range } = await findingOf(site, 'difference-in-degrees');
    const [fix] = await codeActions(site, range, 'quickfix');
    await apply(fix);
    matches(site.getText(), /rise: 8 K,/);
    await noFindingOf(site, 'difference-in-degrees');
  },

  async 'fix all makes every safe edit at once, and then has nothing left to do'() {
    const site = await open(siteFile);
    await findingOf(site, 'difference-in-degrees');
    const whole = new vscode.Range(0, 0, site.lineCount, 0);
    const all = await codeActions(site, whole, 'source.fixAll.dewright');
    equal(all.length, 1);
    await apply(all[0]);
    matches(site.getText(), /rise: 8 K,/);
    await noFindingOf(site, 'difference-in-degrees');
    equal(await codeActions(site, whole, 'source.fixAll.dewright'), []);
  },

  async 'a kit changed on disk refreshes the findings of the sites that use it'() {
    const site = await open(siteFile);
    await noFindingOf(site, 'reference-unknown');
    await rewrite(kitFile, (kit) => kit.replace('hp-heated:', 'hp-renamed:'));
    const { range } = await findingOf(site, 'reference-unknown');
    equal(site.getText(range), 'hp-heated');
    await rewrite(kitFile, (kit) => kit.replace('hp-renamed:', 'hp-heated:'));
    await noFindingOf(site, 'reference-unknown');
  },

  async 'the server finds the files of the workspace, and reads none outside it'() {
    const here = workspaceFile('.').toString();
    const found = (await findFiles()).map((uri) => uri.replace(here, ''));
    equal(found.sort(), ['/fennmoor.dewsite.yaml', '/kits/fennmoor.dewkit.yaml']);
    matches((await readFile(`${here}/kits/fennmoor.dewkit.yaml`)) ?? '', /hp-heated/);
    equal(await readFile(`${here}/kits/missing.dewkit.yaml`), null);
    equal(await readFile(`${here}/kits`), null);
    equal(await readFile(vscode.Uri.file(process.execPath).toString()), null);
    equal(await readFile(`${here}/../${'../'.repeat(20)}etc/passwd`), null);
  },

  async 'after a restart of the server the findings are back'() {
    const site = await open(siteFile);
    await findingOf(site, 'difference-in-degrees');
    await vscode.commands.executeCommand('dewright.restart');
    await findingOf(site, 'difference-in-degrees');
  },
};
