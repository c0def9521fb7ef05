import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { startBrowser } from './browser.ts';
import { FACTS, type InHostResult, type InHostStart, RESULT_MARK, START_MARK } from './in-host/facts.ts';
import { bundledSuite, pageWithSuite, runInHost } from './run-in-host.ts';
import { copyOfWorkspace, describeInEditor, describeInPageAlone, startEditor } from './running-editor.ts';
import { startWebWorkbench } from './web-workbench.ts';

type Place = Pick<InHostStart, 'inWebWorker' | 'scheme'>;

tryFacts('on Node', describeInEditor, { inWebWorker: false, scheme: 'file' }, () => runServed(false));
tryFacts('in a web worker', describeInEditor, { inWebWorker: true, scheme: 'vscode-remote' }, () => runServed(true));
tryFacts('in a page alone', describeInPageAlone, { inWebWorker: true, scheme: 'vscode-test-web' }, runInPageAlone);

/** @param run has the suite run there and returns what it wrote */
function tryFacts(
  host: string,
  describeThere: typeof describeInEditor,
  place: Place,
  run: () => Promise<readonly string[]>,
): void {
  describeThere(`inside the extension host ${host}`, () => {
    let lines: readonly string[] = [];

    beforeAll(async () => {
      lines = await run();
    });

    it('the extension activates there', () => {
      const [start] = marked<InHostStart>(lines, START_MARK);
      expect(start, lines.join('\n')).toMatchObject(place);
      const [activation, findings] = [start?.activation.toFixed(0), start?.firstFindings.toFixed(0)];
      console.log(`${host}: active after ${activation} ms, the first findings ${findings} ms later`);
    });

    describe.each(Object.entries(FACTS))('%s', (_group, facts) => {
      it.each(facts)('%s', (fact) => {
        const result = marked<InHostResult>(lines, RESULT_MARK).find((each) => each.fact === fact);
        expect(result, result === undefined ? lines.join('\n') : result.failure).toEqual({ fact });
      });
    });
  });
}

async function runServed(inBrowser: boolean): Promise<readonly string[]> {
  const { browser, server, folder, end } = await startEditor({ inBrowser });
  try {
    return await runInHost(browser, pageWithSuite(server, await bundledSuite(), folder));
  } finally {
    await end();
  }
}

async function runInPageAlone(): Promise<readonly string[]> {
  const [editor, workbench] = [inject('editor'), inject('webWorkbench')];
  if (!editor.ok) throw new Error(editor.problem);
  if (!workbench.ok) throw new Error(workbench.problem);
  const folder = copyOfWorkspace();
  mkdirSync(join(folder, '.vscode'));
  writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify({ 'files.autoSave': 'off' })); // on in a browser
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
