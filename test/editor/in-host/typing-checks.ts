/** What is offered while a file is written. */
import type * as vscode from 'vscode';
import { ask, equal, matches, open, placeOf, SITE_FILE, type } from './editor-steps.ts';
import type { Checks } from './facts.ts';

export const TYPING_CHECKS: Checks<'typing'> = {
  async 'a key is offered with its explanation'() {
    const offers = await offersAfter('    title: Kiln 2, green oak', '    ');
    const gradient = offers.find(({ label }) => label === 'gradient');
    const { documentation = '' } = gradient ?? {};
    matches(typeof documentation === 'string' ? documentation : documentation.value, /temperature/);
  },

  async 'the quantities that a point can report are offered first, the others with the reason against them'() {
    const offers = await offersAfter('    reports:', '      ');
    const isRefused = offers.map(({ detail = '' }) => detail.startsWith('no: '));
    equal(isRefused.indexOf(true) > 0, true);
    equal(isRefused.lastIndexOf(false) < isRefused.indexOf(true), true);
    const { detail = '' } = offers.find(({ label }) => label === 'wet-bulb') ?? {};
    matches(detail, /the heated head does not know the air temperature/);
  },

  async 'a unit is offered behind a number, the likeliest first'() {
    const offers = await offersAfter('      speed: 2 .. 4 m/s', '      ramp: 0.3 ');
    equal(
      offers.map(({ label }) => label),
      ['K/min', 'K/h'],
    );
  },

  async 'a model of the kit is offered with how well it suits the space'() {
    const [model, ...others] = await offersAfter('    humidity-probe:', '      model: ');
    equal([model?.label, others.length], ['hp-heated', 0]);
    matches(model?.detail ?? '', /^suits, .* to spare$/);
  },
};

/** What is offered behind a text that is typed on a new line below another, best first. */
async function offersAfter(line: string, text: string): Promise<readonly vscode.CompletionItem[]> {
  const site = await open(SITE_FILE);
  const above = site.lineAt(placeOf(site, line)).range.end;
  const cursor = await type(site, above, `\n${text}`);
  const { items } = await ask<vscode.CompletionList>(site, 'executeCompletionItemProvider', cursor);
  return items.toSorted((one, other) => (one.sortText ?? '').localeCompare(other.sortText ?? ''));
}
