import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { FACTS, type InHostResult, type InHostStart, RESULT_MARK, START_MARK } from './in-host/facts.ts';
import { PROJECT_ROOT } from './paths.ts';
import { bundledSuite, pageWithSuite, runInHost } from './run-in-host.ts';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';
import { startWebWorkbench } from './web-workbench.ts';

interface Host {
  readonly host: string;
  readonly inWebWorker: boolean;
  /** Of the folder that is open. */
  readonly scheme: string;
  run(editor: RunningEditor): Promise<readonly string[]>;
}

const HOSTS: readonly Host[] = [
  { host: 'on Node', inWebWorker: false, scheme: 'file', run: runServed },
  { host: 'in a web worker', inWebWorker: true, scheme: 'vscode-remote', run: runServed },
  { host: 'in a page alone', inWebWorker: true, scheme: 'vscode-test-web', run: runInPageAlone },
];

for (const { host, inWebWorker, scheme, run } of HOSTS) {
  describeInEditor(`inside the extension host ${host}`, () => {
    let editor: RunningEditor | undefined;
    let lines: readonly string[] = [];

    beforeAll(async () => {
      editor = await startEditor({ inBrowser: inWebWorker });
      lines = await run(editor);
    });
    afterAll(() => editor?.end());

    it('the extension activates there', () => {
      const [start] = marked<InHostStart>(lines, START_MARK);
      expect(start, lines.join('\n')).toMatchObject({ inWebWorker, scheme });
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

async function runServed({ browser, server, folder }: RunningEditor): Promise<readonly string[]> {
  return runInHost(browser, pageWithSuite(server, await bundledSuite(), folder));
}

async function runInPageAlone({ browser, folder }: RunningEditor): Promise<readonly string[]> {
  const installed = inject('webWorkbench');
  if (!installed.ok) throw new Error(installed.problem);
  mkdirSync(join(folder, '.vscode'));
  writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify({ 'files.autoSave': 'off' }));
  const suite = await bundledSuite();
  const web = await startWebWorkbench({ installed: installed.value, extensionFolder: PROJECT_ROOT, suite, folder });
  try {
    return await runInHost(browser, web.page);
  } finally {
    web.stop();
  }
}

function marked<T>(lines: readonly string[], mark: string): readonly T[] {
  return lines.filter((line) => line.startsWith(mark)).map((line) => JSON.parse(line.slice(mark.length)));
}
