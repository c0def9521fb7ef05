/** Names across files: where they are given, where they are used, and giving them anew. */
import * as vscode from 'vscode';
import { ask, equal, KIT_FILE, matches, open, pathOf, placeOf, SITE_FILE, workspaceFile } from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const NAME_CHECKS: Checks<'names'> = {
  async 'the definition of a model is in the kit'() {
    const site = await open(SITE_FILE);
    const found = await definitionOf(site, 'hp-heated');
    equal(
      found.map(({ targetUri, targetRange }) => [pathOf(targetUri), targetRange.start.line]),
      [[KIT_FILE, 3]],
    );
  },

  async 'the references of a model are found in the kit and in the sites'() {
    const kit = await open(KIT_FILE);
    const found = await ask<vscode.Location[]>(kit, 'executeReferenceProvider', placeOf(kit, 'hp-heated'));
    equal(found.map(({ uri }) => pathOf(uri)).sort(), [SITE_FILE, SITE_FILE, KIT_FILE]);
  },

  async 'the uses of a space are highlighted'() {
    const site = await open(SITE_FILE);
    const found = await ask<vscode.DocumentHighlight[]>(site, 'executeDocumentHighlights', placeOf(site, 'kiln-2'));
    equal(
      found.map(({ range, kind }) => [site.getText(range), kind]),
      [
        ['kiln-2', vscode.DocumentHighlightKind.Write],
        ['kiln-2', vscode.DocumentHighlightKind.Read],
        ['kiln-2', vscode.DocumentHighlightKind.Read],
      ],
    );
  },

  async 'renaming a model changes the kit and the sites'() {
    const site = await open(SITE_FILE);
    const edit = await rename(site, 'hp-heated', 'hp-warm');
    const edits = edit
      .entries()
      .flatMap(([uri, changes]) => changes.map(({ newText }) => `${pathOf(uri)}: ${newText}`));
    equal(edits.sort(), [`${SITE_FILE}: hp-warm`, `${SITE_FILE}: hp-warm`, `${KIT_FILE}: hp-warm`]);
  },

  async 'a name that does not fit, and a word that is no name, are refused with the reason'() {
    const site = await open(SITE_FILE);
    matches(await refusalOf(rename(site, 'hp-heated', 'HP heated')), /“HP heated” cannot be a name/);
    const number = ask(site, 'prepareRename', placeOf(site, '210 m'));
    matches(await refusalOf(number), /Only spaces, points, models, kits, sites and anchors can be renamed/);
  },

  async 'renaming a kit file updates the sites that name it'() {
    const site = await open(SITE_FILE);
    await moveFile(KIT_FILE, 'kits/kilns.dewkit.yaml');
    matches(site.getText(), /^ {2}kits: \[kits\/kilns\.dewkit\.yaml\]$/m);
    const [model] = await definitionOf(site, 'hp-heated');
    equal(model && pathOf(model.targetUri), 'kits/kilns.dewkit.yaml');
    await moveFile('kits/kilns.dewkit.yaml', KIT_FILE);
    matches(site.getText(), /^ {2}kits: \[kits\/fennmoor\.dewkit\.yaml\]$/m);
  },

  async 'the path of a kit is a link to it'() {
    const site = await open(SITE_FILE);
    const links = await ask<vscode.DocumentLink[]>(site, 'executeLinkProvider', 100);
    equal(
      links.map(({ range, target }) => [site.getText(range), target && pathOf(target)]),
      [[KIT_FILE, KIT_FILE]],
    );
  },
};

function definitionOf(document: vscode.TextDocument, words: string): Thenable<vscode.LocationLink[]> {
  return ask(document, 'executeDefinitionProvider', placeOf(document, words));
}

function rename(document: vscode.TextDocument, words: string, newName: string): Thenable<vscode.WorkspaceEdit> {
  return ask(document, 'executeDocumentRenameProvider', placeOf(document, words), newName);
}

async function refusalOf(request: Thenable<unknown>): Promise<string> {
  return request.then(
    () => 'not refused',
    (error: unknown) => String(error),
  );
}

/** As in the Explorer: whoever wants to change other files for it is asked first. */
async function moveFile(from: string, to: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.renameFile(workspaceFile(from), workspaceFile(to));
  equal(await vscode.workspace.applyEdit(edit), true);
}
