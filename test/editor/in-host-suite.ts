/** Runs inside the extension host with the editor's real API; bundled for it by the test outside. */
import * as vscode from 'vscode';
import { findFiles } from '../../client/src/files.ts';
import { readFile } from '../../client/src/read-file.ts';
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
  write,
} from './in-host-editor.ts';
import {
  IN_HOST_FACTS,
  type InHostFact,
  type InHostResult,
  type InHostStart,
  RESULT_MARK,
  START_MARK,
} from './in-host-facts.ts';

const SITE_FILE = 'fennmoor.dewsite.yaml';
const KIT_FILE = 'kits/fennmoor.dewkit.yaml';

/** The editor calls this and waits for it. */
export async function run(): Promise<void> {
  console.log(START_MARK + JSON.stringify(await start()));
  for (const fact of IN_HOST_FACTS) {
    const result: InHostResult = await checks[fact]().then(
      () => ({ fact }),
      (error: unknown) => ({ fact, failure: String(error) }),
    );
    console.log(RESULT_MARK + JSON.stringify(result));
  }
}

/** No file of ours is open yet, so that this is what activates the extension. */
async function start(): Promise<InHostStart> {
  const before = performance.now();
  await extension().activate();
  const active = performance.now();
  await findingOf(await open(SITE_FILE), 'air-temperature-missing');
  const firstFindings = performance.now() - active;
  return { inWebWorker: 'importScripts' in globalThis, activation: active - before, firstFindings };
}

function extension(): vscode.Extension<unknown> {
  const found = vscode.extensions.getExtension('dewright.dewright');
  if (found === undefined) throw new Error('the extension is not there');
  return found;
}

const checks: Readonly<Record<InHostFact, () => Promise<void>>> = {
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

  async 'a hover on a point shows its highest dew point'() {
    matches(await hoverText(await open(SITE_FILE), 'K2-MT-101'), /Highest dew point: \*\*74\.9 °C\*\*/);
  },

  async 'the quick fix of a finding removes it'() {
    const site = await open(SITE_FILE);
    const { range } = await findingOf(site, 'air-temperature-missing');
    const fixes = await codeActions(site, range, 'quickfix');
    await apply(fixes.find(({ title }) => title.startsWith('Report dew point instead')));
    await noFindingOf(site, 'air-temperature-missing');
  },

  async 'fix all makes every safe edit, and then has nothing left to do'() {
    const site = await open(SITE_FILE);
    await findingOf(site, 'air-temperature-unassigned');
    const whole = new vscode.Range(0, 0, site.lineCount, 0);
    const [all, ...others] = await codeActions(site, whole, 'source.fixAll.dewright');
    equal(others.length, 0);
    await apply(all);
    await noFindingOf(site, 'air-temperature-unassigned');
    equal(await codeActions(site, whole, 'source.fixAll.dewright'), []);
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

  async 'the server finds the files of the workspace without what git ignores'() {
    await write('.gitignore', 'old/');
    await write('old/copy.dewsite.yaml', 'dewright: 1');
    const here = workspaceFile('.').toString();
    const found = (await findFiles()).map((uri) => uri.replace(here, ''));
    equal(found.sort(), ['/fennmoor.dewsite.yaml', '/kits/fennmoor.dewkit.yaml']);
    await vscode.workspace.fs.delete(workspaceFile('old'), { recursive: true });
  },

  async 'the server reads files of the workspace, and none outside it'() {
    const here = workspaceFile('.').toString();
    matches((await readFile(`${here}/kits/fennmoor.dewkit.yaml`)) ?? '', /hp-heated/);
    equal(await readFile(`${here}/kits/missing.dewkit.yaml`), null);
    equal(await readFile(`${here}/kits`), null);
    const outside = vscode.Uri.joinPath(extension().extensionUri, 'package.json');
    equal(await exists(outside), true);
    equal(await readFile(outside.toString()), null);
    equal(await readFile(`${here}/../${'../'.repeat(20)}etc/passwd`), null);
  },

  async 'a new site file holds the skeleton and is checked before it is saved'() {
    await vscode.commands.executeCommand('dewright.newSite');
    const site = vscode.window.activeTextEditor?.document;
    if (site === undefined) throw new Error('no file was opened');
    equal(site.uri.scheme, 'untitled');
    equal(site.fileName.endsWith('/new-site.dewsite.yaml'), true);
    matches(site.getText(), /^dewright: 1\nsite:/);
    await findingOf(site, 'check-plan-missing');
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  },

  async 'after a restart of the server the findings are back'() {
    const site = await open(SITE_FILE);
    await findingOf(site, 'air-temperature-missing');
    await vscode.commands.executeCommand('dewright.restart');
    await findingOf(site, 'air-temperature-missing');
  },
};
