/** What is shown, offered and mended in a visit, from the site that was visited. */
import * as vscode from 'vscode';
import {
  apply,
  ask,
  codeActions,
  findingOf,
  matches,
  open,
  placeOf,
  SITE_FILE,
  type,
  workspaceFile,
  write,
} from './editor-steps.ts';
import type { Checks } from './facts.ts';

const VISIT_FILE = 'first.dewvisit.yaml';
const VISIT = `dewright: 1
visit: {site: fennmoor, date: 2026-09-02}
steps:
  heater-on: {point: K2-MT-101, done: true}
readings:
  - {point: K2-MT-101, quantity: dew-point, shown: 61.2 degC, reference: 58.4 degC, reference-uncertainty: 0.3 K}
settings:
  - {point: K2-MT-101, heater: on-demand}
`;

export const VISIT_CHECKS: Checks<'visits'> = {
  'the steps of the handover are offered in a visit, with what should be seen': () =>
    inVisit(async (visit) => {
      await findingOf(visit, 'step-open');
      const cursor = await type(visit, visit.lineAt(placeOf(visit, 'heater-on')).range.end, '\n  ');
      const { items } = await ask<vscode.CompletionList>(visit, 'executeCompletionItemProvider', cursor);
      const { documentation = '' } = items.find(({ label }) => label === 'supply-measured') ?? {};
      matches(typeof documentation === 'string' ? documentation : documentation.value, /It is at least .* V/);
    }),

  'a hover on a reading of a visit shows how it agrees with its reference': () =>
    inVisit(async (visit) => {
      await findingOf(visit, 'visit-disagrees');
      const hovers = await ask<vscode.Hover[]>(visit, 'executeHoverProvider', placeOf(visit, '61.2 degC'));
      const parts = hovers.flatMap(({ contents }) => contents);
      const text = parts.map((part) => (typeof part === 'string' ? part : part.value)).join('\n');
      matches(text, /\*\*En [\d.]+\*\*: the two disagree/);
    }),

  'the fix of a setting that differs changes the site file': () =>
    inVisit(async (visit) => {
      const { range } = await findingOf(visit, 'setting-differs');
      const fixes = await codeActions(visit, range, 'quickfix');
      await apply(fixes.find(({ title }) => title.startsWith('Set the site file to the instrument')));
      const site = await vscode.workspace.openTextDocument(workspaceFile(SITE_FILE));
      matches(site.getText(), /heater: \{ mode: on-demand, rise: 8 K/);
      await open(SITE_FILE);
    }),
};

/** The visit is written for the check, and gone afterwards. */
async function inVisit(check: (visit: vscode.TextDocument) => Promise<void>): Promise<void> {
  await write(VISIT_FILE, VISIT);
  try {
    const visit = await open(VISIT_FILE);
    await check(visit);
    await open(VISIT_FILE);
  } finally {
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await vscode.workspace.fs.delete(workspaceFile(VISIT_FILE));
  }
}
