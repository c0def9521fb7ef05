import { expect, it } from 'vitest';
import { KIT, SITE } from '../features/fennmoor.ts';
import type { Session } from './session.ts';
import { sessionOfTest } from './session-of-test.ts';

const SITE_URI = 'file:///fennmoor.dewsite.yaml';
const KIT_URI = 'file:///kits/fennmoor.dewkit.yaml';
const FILES = { [SITE_URI]: SITE, [KIT_URI]: KIT };

const refuse = (): never => {
  throw new Error('This editor does not do that.');
};

async function symbols({ editor }: Session): Promise<readonly unknown[]> {
  return editor.sendRequest('workspace/symbol', { query: 'kiln-2' });
}

it('an editor that refuses to draw its findings and hints anew is served all the same', async () => {
  const workspace = {
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
  };
  const asked: string[] = [];
  const session = await sessionOfTest({
    files: FILES,
    capabilities: { textDocument: { diagnostic: {} }, workspace },
    answers: Object.fromEntries(
      ['diagnostic', 'inlayHint', 'codeLens'].map((kind) => [
        `workspace/${kind}/refresh`,
        () => {
          asked.push(kind);
          refuse();
        },
      ]),
    ),
  });
  await expect.poll(() => new Set(asked).size, { timeout: 5000 }).toBe(3);
  expect(await symbols(session)).toHaveLength(1);
});

it('an editor that refuses to tell of changed files and settings has its workspace read all the same', async () => {
  const session = await sessionOfTest({
    files: FILES,
    capabilities: {
      workspace: {
        didChangeConfiguration: { dynamicRegistration: true },
        didChangeWatchedFiles: { dynamicRegistration: true },
      },
    },
    answers: { 'client/registerCapability': refuse },
  });
  await expect.poll(() => symbols(session), { timeout: 5000 }).toHaveLength(1);
});

it('an editor that says nothing of the settings that it is asked for is shown every lens', async () => {
  const session = await sessionOfTest({
    files: FILES,
    capabilities: { workspace: { configuration: true } },
    answers: { 'workspace/configuration': refuse },
  });
  await session.open(SITE_URI, SITE);
  const textDocument = { uri: SITE_URI };
  expect(await session.editor.sendRequest('textDocument/codeLens', { textDocument })).not.toEqual([]);
});
