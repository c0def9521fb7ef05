import { describe, expect, it } from 'vitest';
import type { ApplyWorkspaceEditParams, CodeLens } from 'vscode-languageserver';
import { FENNMOOR, SITE } from '../features/fennmoor.ts';
import { uriOf } from '../features/marked-files.ts';
import { sessionOfTest } from './session-of-test.ts';

const FILES = Object.fromEntries(Object.entries(FENNMOOR).map(([name, text]) => [uriOf(name), text]));
const SITE_URI = uriOf('fennmoor.dewsite.yaml');
const RISE = 'points/K2-MT-101/humidity-probe/heater/rise';
const AT_POINT = { line: SITE.slice(0, SITE.indexOf('K2-MT-101:')).split('\n').length - 1, character: 4 };

interface Shown {
  readonly title: string;
  readonly body: string;
  readonly isPartial?: boolean;
}

async function opened(files = FILES) {
  const { editor, open } = await sessionOfTest({ files, isOurs: true });
  await open(SITE_URI, files[SITE_URI] ?? '');
  const ask = (kind: string): Promise<Shown | null> =>
    editor.sendRequest('dewright/view', { kind, uri: SITE_URI, position: AT_POINT, inputs: {} });
  return { editor, ask };
}

describe('a view', () => {
  it('of a kind that there is none of is nothing', async () => {
    const { ask } = await opened();
    expect(await ask('nonsense')).toBeNull();
  });

  it('of all points grows until every site is in it', async () => {
    const others = Array.from({ length: 30 }, (_, index) => [
      uriOf(`site-${index}.dewsite.yaml`),
      SITE.replaceAll('K2-MT', `K${index}`),
    ]);
    const { ask } = await opened({ ...FILES, ...Object.fromEntries(others) });
    const seen: number[] = [];
    for (let isPartial = true; isPartial; ) {
      const view = await ask('overview');
      seen.push(view?.body.match(/<tr>/g)?.length ?? 0);
      isPartial = view?.isPartial === true || (seen.at(-1) ?? 0) < 2;
    }
    // Three reports in each site, and the row of headings; the sites are found on disk while the first is shown.
    const rows = async (): Promise<number> => (await ask('overview'))?.body.match(/<tr>/g)?.length ?? 0;
    await expect.poll(rows, { timeout: 20_000 }).toBe(31 * 3 + 1);
    expect(seen).toEqual(seen.toSorted((one, other) => one - other));
  });

  it('writes what was tried as one edit that the editor can undo', async () => {
    const { editor } = await opened();
    const applied: ApplyWorkspaceEditParams[] = [];
    editor.onRequest('workspace/applyEdit', (params: ApplyWorkspaceEditParams) => {
      applied.push(params);
      return { applied: true };
    });
    const write = (inputs: Readonly<Record<string, string>>) =>
      editor.sendRequest('dewright/viewWrite', { kind: 'what-if', uri: SITE_URI, position: AT_POINT, inputs });
    expect(await write({ [RISE]: '6 K' })).toEqual({ applied: true });
    expect(await write({ [RISE]: 'hot' })).toEqual({ applied: false });
    const [{ edit } = {}, ...others] = applied;
    expect(others).toEqual([]);
    expect(edit?.changes?.[SITE_URI]?.map(({ newText }) => newText)).toEqual(['6 K']);
  });

  it('is opened by a lens above each point in the extension, which has its command', async () => {
    const { editor } = await opened();
    const lenses = await editor.sendRequest<CodeLens[]>('textDocument/codeLens', {
      textDocument: { uri: SITE_URI },
    });
    const showing = lenses.filter(({ command }) => command?.command === 'dewright.showPoint');
    expect(showing.map(({ command }) => command?.arguments)).toEqual([
      [{ line: AT_POINT.line, character: 2 }],
      [expect.objectContaining({ character: 2 })],
    ]);
  });
});
