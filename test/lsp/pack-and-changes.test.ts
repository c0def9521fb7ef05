import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { KIT, SITE } from '../features/fennmoor.ts';
import type { Session } from './session.ts';
import { sessionOfTest } from './session-of-test.ts';

const SITE_URI = 'file:///w/fennmoor.dewsite.yaml';
const KIT_URI = 'file:///w/kits/fennmoor.dewkit.yaml';
const FILES = { [SITE_URI]: SITE, [KIT_URI]: KIT };
const PLACE = { kind: 'comparison', uri: SITE_URI, position: { line: 0, character: 0 } };

/** @param committed the texts of the last revision, by URI */
async function start(committed: Readonly<Record<string, string>> = {}): Promise<Session> {
  const session = await sessionOfTest({ files: FILES, isOurs: true });
  session.editor.onRequest('dewright/readCommitted', ({ uri }: { readonly uri: string }) => ({
    text: committed[uri] ?? null,
  }));
  await session.open(SITE_URI, SITE);
  return session;
}

describe('dewright/pack', () => {
  it.each([
    ['html', /^<!doctype html>/],
    ['md', /^# Fennmoor Timber: handover pack\n/],
  ])('gives the pack of an open site as %s, as the command line names its contents', async (format, beginning) => {
    const { editor } = await start();
    const { text } = await editor.sendRequest<{ text: string }>('dewright/pack', { uri: SITE_URI, format });
    expect(text).toMatch(beginning);
    const hash = createHash('sha256').update(`${SITE}\0${KIT}\0`).digest('hex').slice(0, 12);
    expect(text).toContain(`from contents ${hash}`);
  });

  it('has none of a kit', async () => {
    const { editor, open } = await start();
    await open(KIT_URI, KIT);
    expect(await editor.sendRequest('dewright/pack', { uri: KIT_URI, format: 'md' })).toBeNull();
  });
});

describe('dewright/view of the changes', () => {
  it('lays the text as it stands against the last committed one, with the kit of that revision', async () => {
    const { editor } = await start({
      [SITE_URI]: SITE.replace('tolerance: 0.8 K', 'tolerance: 0.7 K'),
      [KIT_URI]: KIT.replace('head-temperature: 0.1 K', 'head-temperature: 0.3 K'),
    });
    const { body } = await editor.sendRequest<{ body: string }>('dewright/view', { ...PLACE, inputs: {} });
    expect(body).toContain('reports.dew-point.tolerance: 0.7 K → 0.8 K');
    expect(body).toContain('head-temperature: 0.3 K → 0.1 K');
  });

  it('says so where nothing is committed', async () => {
    const { editor } = await start();
    const { body } = await editor.sendRequest<{ body: string }>('dewright/view', { ...PLACE, inputs: {} });
    expect(body).toContain('There is no committed version to compare with');
  });
});
