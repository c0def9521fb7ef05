/** Prepares once what all editor tests share, and hands it to them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import type { Outcome } from '../../server/src/base/outcome.ts';
import { type EditorUnderTest, prepareEditor } from './editor-under-test.ts';
import { setUpWebWorkbench } from './web-workbench.ts';

declare module 'vitest' {
  interface ProvidedContext {
    editor: Outcome<EditorUnderTest, string>;
    webWorkbench: Outcome<string, string>;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'dewright-vsix-'));
  const editor = prepareEditor(folder, console.error);
  const webWorkbench = setUpWebWorkbench(console.error);
  for (const needed of [editor, webWorkbench]) if (!needed.ok) console.error(needed.problem);
  project.provide('editor', editor);
  project.provide('webWorkbench', webWorkbench);
  return () => rmSync(folder, { recursive: true });
}
