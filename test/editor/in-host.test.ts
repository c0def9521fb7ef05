import { rmSync } from 'node:fs';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { startBrowser } from './browser.ts';
import { setForFolder } from './folder-settings.ts';
import { FACTS, type InHostResult, type InHostStart, RESULT_MARK, START_MARK } from './in-host/facts.ts';
import { bundledSuite, pageWithSuite, runInHost } from './run-in-host.ts';
import {
  copyOfWorkspace,
  describeInEditor,
  describeInNewestEditor,
  describeInPageAlone,
  type EditorOptions,
  startEditor,
} from './running-editor.ts';
import { NEWEST_RELEASE, OLDEST_RELEASE } from './setup-workbench.ts';
import { CODE_VERSION, startWebWorkbench } from './web-workbench.ts';

type Place = Pick<InHostStart, 'version' | 'inWebWorker' | 'scheme'>;

const ON_NODE = { inWebWorker: false, scheme: 'file' };
const IN_WEB_WORKER = { inWebWorker: true, scheme: 'vscode-remote' };
const IN_PAGE_ALONE = { inWebWorker: true, scheme: 'vscode-test-web' };
const OLDEST = OLDEST_RELEASE.version;
const NEWEST = NEWEST_RELEASE.version;

tryFacts('on Node', { version: OLDEST, ...ON_NODE }, describeInEditor, () => runServed({}));
tryFacts('on Node', { version: NEWEST, ...ON_NODE }, describeInNewestEditor, () => runServed({ isNewest: true }));
tryFacts('in a web worker', { version: NEWEST, ...IN_WEB_WORKER }, describeInNewestEditor, () =>
  runServed({ isNewest: true, inBrowser: true }),
);
tryFacts('in a page alone', { version: CODE_VERSION, ...IN_PAGE_ALONE }, describeInPageAlone, runInPageAlone);

/** @param run has the suite run there and returns what it wrote */
function tryFacts(
  host: string,
  place: Place,
  describeThere: typeof describeInEditor,
  run: () => Promise<readonly string[]>,
): void {
  const where = `${host} in VS Code ${place.version}`;
  describeThere(`inside the extension host ${where}`, () => {
    let lines: readonly string[] = [];

    beforeAll(async () => {
      lines = await run();
    });

    it('the extension activates there', () => {
      const [start] = marked<InHostStart>(lines, START_MARK);
      expect(start, lines.join('\n')).toMatchObject(place);
      const [activation, findings] = [start?.activation.toFixed(0), start?.firstFindings.toFixed(0)];
      console.log(`${where}: active after ${activation} ms, the first findings ${findings} ms later`);
    });

    describe.each(Object.entries(FACTS))('%s', (_group, facts) => {
      it.each(facts)('%s', (fact) => {
        const result = marked<InHostResult>(lines, RESULT_MARK).find((each) => each.fact === fact);
        expect(result, result === undefined ? lines.join('\n') : result.failure).toEqual({ fact });
      });
    });
  });
}

async function runServed(options: EditorOptions): Promise<readonly string[]> {
  const { browser, server, end } = await startEditor(options);
  const folder = copyOfWorkspace();
  try {
    return await runInHost(browser, pageWithSuite(server, await bundledSuite(), folder));
  } finally {
    await end();
    rmSync(folder, { recursive: true });
  }
}

async function runInPageAlone(): Promise<readonly string[]> {
  const [editor, workbench] = [inject('editor'), inject('webWorkbench')];
  if (!editor.ok) throw new Error(editor.problem);
  if (!workbench.ok) throw new Error(workbench.problem);
  const folder = copyOfWorkspace();
  setForFolder(folder, { 'files.autoSave': 'off' }); // on in a browser
  const server = await startWebWorkbench(workbench.value, await bundledSuite(), folder);
  const browser = await startBrowser(editor.value.chromium);
  try {
    return await runInHost(browser, server.page);
  } finally {
    await browser.close();
    server.stop();
    rmSync(folder, { recursive: true });
  }
}

function marked<T>(lines: readonly string[], mark: string): readonly T[] {
  return lines.filter((line) => line.startsWith(mark)).map((line) => JSON.parse(line.slice(mark.length)));
}
