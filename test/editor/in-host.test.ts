import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runInHost } from './in-host.ts';
import { IN_HOST_FACTS, type InHostResult, RESULT_MARK } from './in-host-facts.ts';
import { PROJECT_ROOT } from './paths.ts';
import { describeInEditor, type RunningEditor, startEditor } from './running-editor.ts';

describeInEditor('inside the extension host', () => {
  let editor: RunningEditor | undefined;
  let lines: readonly string[] = [];

  beforeAll(async () => {
    editor = await startEditor();
    const suite = join(editor.server.dataFolder, 'in-host-suite.js');
    await build({
      entryPoints: [join(PROJECT_ROOT, 'test/editor/in-host-suite.ts')],
      outfile: suite,
      bundle: true,
      platform: 'node',
      format: 'cjs',
      external: ['vscode'],
    });
    const { browser, server, folder } = editor;
    lines = await runInHost(browser, server, { extensionFolder: PROJECT_ROOT, suite, folder });
  });
  afterAll(() => editor?.end());

  it.each(IN_HOST_FACTS)('%s', (fact) => {
    const results = lines.filter((line) => line.startsWith(RESULT_MARK)).map(resultIn);
    const result = results.find((each) => each.fact === fact);
    expect(result, result === undefined ? lines.join('\n') : result.failure).toEqual({ fact });
  });
});

function resultIn(line: string): InHostResult {
  return JSON.parse(line.slice(RESULT_MARK.length));
}
