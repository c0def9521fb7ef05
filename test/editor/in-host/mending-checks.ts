/** What the light bulb offers: fixes, acceptances, and rewriting what stands there. */
import * as vscode from 'vscode';
import {
  apply,
  codeActions,
  equal,
  findingOf,
  matches,
  noFindingOf,
  open,
  placeOf,
  SITE_FILE,
  whole,
} from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const MENDING_CHECKS: Checks<'mending'> = {
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
    const [all, ...others] = await codeActions(site, whole(site), 'source.fixAll.dewright');
    equal(others.length, 0);
    await apply(all);
    await noFindingOf(site, 'air-temperature-unassigned');
    equal(await codeActions(site, whole(site), 'source.fixAll.dewright'), []);
  },

  async 'accepting a finding writes the comment and selects the reason to be typed over'() {
    const site = await open(SITE_FILE);
    const { range } = await findingOf(site, 'air-temperature-missing');
    const actions = await codeActions(site, range, 'quickfix');
    const acceptance = actions.find(({ title }) => title.startsWith('Accept air-temperature-missing here'));
    await apply(acceptance);
    equal(site.lineAt(range.start.line).text, '      # accept air-temperature-missing: say why this stands');
    await noFindingOf(site, 'air-temperature-missing');
    const { command = '', arguments: words = [] } = acceptance?.command ?? {};
    await vscode.commands.executeCommand(command, ...words);
    const editor = vscode.window.activeTextEditor;
    equal(editor && site.getText(editor.selection), 'say why this stands');
  },

  async 'a value is written in another unit'() {
    const site = await rewritten('99 kPa', /^Write as 990 hPa$/);
    matches(site.getText(), /^ {4}pressure: 990 hPa$/m);
  },

  async 'a humidity is written as a dew point, and the title says what the envelope then takes in'() {
    const site = await rewritten('35 .. 88 %RH', /^Write as dew point, .*; the envelope then takes in .* %RH$/);
    matches(site.getText(), /^ {6}dew-point: \d+ \.\. \d+ degC$/m);
  },

  async 'the envelope of a space becomes its first phase'() {
    const site = await rewritten('air:', /^Make this envelope a phase/, 'refactor.extract');
    matches(site.getText(), /^ {4}phases:\n {6}operation:\n {8}temperature: 55 \.\. 78 degC$/m);
  },

  async 'a point is copied under the next free tag'() {
    const site = await rewritten('K2-MT-101', /^Copy K2-MT-101 as K2-MT-103/);
    matches(site.getText(), /^ {2}K2-MT-103:\n {4}title: Kiln 2, air on the load/m);
  },
};

/** The site after the one action of this title that is offered at these words. */
async function rewritten(
  words: string,
  title: RegExp,
  kind: 'refactor.rewrite' | 'refactor.extract' = 'refactor.rewrite',
): Promise<vscode.TextDocument> {
  const site = await open(SITE_FILE);
  const place = placeOf(site, words);
  const actions = await codeActions(site, new vscode.Range(place, place), kind);
  const fitting = actions.filter((action) => title.test(action.title));
  equal(fitting.length, 1);
  await apply(fitting[0]);
  return site;
}
