/** Everything that is needed to try the extension in a real editor, made ready in one step. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { fail, type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { findChromium } from './browser.ts';
import { projectRoot } from './paths.ts';
import { setUpWorkbench, type Workbench } from './setup-workbench.ts';

export interface EditorUnderTest {
  readonly workbench: Workbench;
  readonly chromium: string;
  /** The extension, packed as it is published. */
  readonly vsix: string;
}

/** The editor and the extension packed into the folder, or one sentence that says what is missing. */
export function prepareEditor(folder: string, say: (line: string) => void): Outcome<EditorUnderTest, string> {
  const chromium = findChromium();
  if (!chromium.ok) return chromium;
  const workbench = setUpWorkbench(say);
  if (!workbench.ok) return workbench;
  const vsix = packExtension(folder);
  if (!vsix.ok) return vsix;
  return succeed({ workbench: workbench.value, chromium: chromium.value, vsix: vsix.value });
}

export function packExtension(folder: string): Outcome<string, string> {
  const vsix = join(folder, 'dewright.vsix');
  try {
    execFileSync('npm', ['run', 'package', '--', '--out', vsix], { cwd: projectRoot, stdio: 'pipe' });
  } catch (error) {
    return fail(`The extension could not be packed: ${error instanceof Error ? error.message : error}`);
  }
  return succeed(vsix);
}
