/** What the extension itself does: files for the server, a new file, a new start. */
import * as vscode from 'vscode';
import { findFiles } from '../../../client/src/files.ts';
import { readFile } from '../../../client/src/read-file.ts';
import {
  equal,
  exists,
  extension,
  findingOf,
  KIT_FILE,
  matches,
  open,
  pathOf,
  SITE_FILE,
  workspaceFile,
  write,
} from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const FILE_CHECKS: Checks<'files'> = {
  async 'the server finds the files of the workspace without what git ignores'() {
    await write('.gitignore', 'old/');
    await write('old/copy.dewsite.yaml', 'dewright: 1');
    const found = (await findFiles()).map((uri) => pathOf(vscode.Uri.parse(uri)));
    equal(found.sort(), [SITE_FILE, KIT_FILE]);
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

  async 'what is asked just as the server is restarted is answered'() {
    const asked = vscode.commands.executeCommand('dewright.newSite');
    await vscode.commands.executeCommand('dewright.restart');
    await asked;
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  },
};
