/** Prepares once what all editor tests share, and hands it to them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import type { Outcome } from '../../server/src/base/outcome.ts';
import { type EditorUnderTest, prepareEditor } from './editor-under-test.ts';
import { NEWEST_RELEASE, setUpWorkbench, type Workbench } from './setup-workbench.ts';
import { setUpWebWorkbench } from './web-workbench.ts';

declare module 'vitest' {
  interface ProvidedContext {
    editor: Outcome<EditorUnderTest, string>;
    newestWorkbench: Outcome<Workbench, string>;
    webWorkbench: Outcome<string, string>;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-vsix-'));
  const editor = prepareEditor(folder, console.error);
  const newestWorkbench = setUpWorkbench(NEWEST_RELEASE, console.error);
  const webWorkbench = setUpWebWorkbench(console.error);
  for (const needed of [editor, newestWorkbench, webWorkbench]) if (!needed.ok) console.error(needed.problem);
  project.provide('editor', editor);
  project.provide('newestWorkbench', newestWorkbench);
  project.provide('webWorkbench', webWorkbench);
  return () => rmSync(folder, { recursive: true });
}
