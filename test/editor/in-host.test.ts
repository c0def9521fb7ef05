import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runInHost } from './in-host.ts';
import { IN_HOST_FACTS, type InHostResult, type InHostStart, RESULT_MARK, START_MARK } from './in-host-facts.ts';
import { CACHE_FOLDER, PROJECT_ROOT } from './paths.ts';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';

const HOSTS = [
  { host: 'on Node', inBrowser: false },
  { host: 'in a web worker', inBrowser: true },
];

for (const { host, inBrowser } of HOSTS) {
  describeInEditor(`inside the extension host ${host}`, () => {
    let editor: RunningEditor | undefined;
    let lines: readonly string[] = [];

    beforeAll(async () => {
      editor = await startEditor({ inBrowser });
      const suite = await bundledSuite();
      const { browser, server, folder } = editor;
      lines = await runInHost(browser, server, { extensionFolder: PROJECT_ROOT, suite, folder });
    });
    afterAll(() => editor?.end());

    it('the extension activates there', () => {
      const [start] = marked<InHostStart>(lines, START_MARK);
      expect(start, lines.join('\n')).toMatchObject({ inWebWorker: inBrowser });
      const [activation, findings] = [start?.activation.toFixed(0), start?.firstFindings.toFixed(0)];
      console.log(`${host}: active after ${activation} ms, the first findings ${findings} ms later`);
    });

    it.each(IN_HOST_FACTS)('%s', (fact) => {
      const result = marked<InHostResult>(lines, RESULT_MARK).find((each) => each.fact === fact);
      expect(result, result === undefined ? lines.join('\n') : result.failure).toEqual({ fact });
    });
  });
}

/** Lies below the folder of the extension: the editor then runs it in the host that runs the extension. */
async function bundledSuite(): Promise<string> {
  const outfile = join(CACHE_FOLDER, 'in-host-suite.js');
  await build({
    entryPoints: [join(PROJECT_ROOT, 'test/editor/in-host-suite.ts')],
    outfile,
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
  });
  return outfile;
}

function marked<T>(lines: readonly string[], mark: string): readonly T[] {
  return lines.filter((line) => line.startsWith(mark)).map((line) => JSON.parse(line.slice(mark.length)));
}
