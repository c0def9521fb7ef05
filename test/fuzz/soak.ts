/**
 * The soak: `npm run soak`. 20,000 edits of one open site and 2,000 files opened and closed, then the memory of the
 * process against what it was when the server was warm.
 */
import { setTimeout as wait } from 'node:timers/promises';
import { startSession } from '../lsp/session.ts';
import { mutate } from './mutations.ts';
import { Random } from './random.ts';
import { SEED_FILES } from './seed-files.ts';

const EDITS = 20_000;
const FILES = 2000;
/** What the heap may have grown by, in MB: what is compiled and cached by then, and nothing for an edit. */
const ALLOWED_GROWTH = 16;

const random = new Random(1);
const [site] = SEED_FILES.filter(({ path }) => path.endsWith('timber-kilns.dewsite.yaml'));
if (site === undefined || global.gc === undefined) throw new Error('run it by npm run soak, at the root');
const uri = 'file:///fennmoor/site.dewsite.yaml';
const session = await startSession({ files: { [uri]: site.text } });
await session.open(uri, site.text);

await edit(500);
await openAndClose(100);
const before = await heap();
await edit(EDITS);
const afterEdits = await heap();
await openAndClose(FILES);
const after = await heap();
await session.end();

process.stdout.write(
  `heap: ${before} MB warm, ${afterEdits} MB after ${EDITS} edits, ${after} MB after ${FILES} files\n`,
);
process.exitCode = Math.max(afterEdits, after) - before > ALLOWED_GROWTH ? 1 : 0;

async function edit(times: number): Promise<void> {
  for (let left = times; left > 0; left--) {
    await session.change(uri, mutate(site?.text ?? '', random, site?.text ?? ''));
    await session.editor.sendRequest('textDocument/hover', {
      textDocument: { uri },
      position: { line: left % 90, character: 8 },
    });
  }
  await session.change(uri, site?.text ?? '');
}

async function openAndClose(files: number): Promise<void> {
  for (let index = 0; index < files; index++) {
    const { kind, text } = random.pick(SEED_FILES);
    const other = `file:///fennmoor/other-${index}.dew${kind}.yaml`;
    await session.open(other, text);
    await session.editor.sendRequest('textDocument/documentSymbol', { textDocument: { uri: other } });
    await session.editor.sendNotification('textDocument/didClose', { textDocument: { uri: other } });
  }
}

/** In MB, after what nobody holds is gone. */
async function heap(): Promise<number> {
  await wait(200);
  global.gc?.();
  return Math.round(process.memoryUsage().heapUsed / 2 ** 20);
}
