import { expect, it } from 'vitest';
import { Library } from '../../server/src/lsp/library.ts';
import { KIT, SITE } from '../features/fennmoor.ts';

const SITE_URI = 'file:///fennmoor.dewsite.yaml';
const KIT_URI = 'file:///kits/fennmoor.dewkit.yaml';

/** A disk whose answers come when the test lets them, in the order that it likes. */
function slowDisk() {
  const asked: { readonly uri: string; answer(text: string | undefined): void }[] = [];
  const readFile = (uri: string): Promise<string | undefined> =>
    new Promise((answer) => {
      asked.push({ uri, answer });
    });
  return { asked, library: new Library({ findFiles: async () => [SITE_URI, KIT_URI], readFile }) };
}

it('of two readings of a file the one asked for last counts, though the other answers later', async () => {
  const { asked, library } = slowDisk();
  const changes = [library.closed(KIT_URI), library.closed(KIT_URI)];
  asked[1]?.answer(KIT);
  asked[0]?.answer('dewright: 1\n');
  await Promise.all(changes);
  expect(library.workspace.parsed(KIT_URI)?.text).toBe(KIT);
});

it('what was typed into a file that was opened while it was read stands', async () => {
  const { asked, library } = slowDisk();
  const closing = library.closed(SITE_URI);
  library.opened(SITE_URI, SITE);
  asked[0]?.answer('dewright: 1\n');
  await closing;
  expect(library.workspace.parsed(SITE_URI)?.text).toBe(SITE);
});

it('a file that is gone from the disk is gone, and stays while it is open', async () => {
  const files = new Map([
    [SITE_URI, SITE],
    [KIT_URI, KIT],
  ]);
  const library = new Library({ findFiles: async () => [...files.keys()], readFile: async (uri) => files.get(uri) });
  await library.readAll();
  library.opened(SITE_URI, SITE);
  files.clear();
  await library.changedOnDisk([SITE_URI, KIT_URI]);
  expect(library.workspace.files()).toEqual([SITE_URI]);
  files.set(KIT_URI, KIT);
  await library.readKitsOf(SITE_URI);
  expect(library.workspace.files()).toEqual([SITE_URI, KIT_URI]);
});
