/** Everything that is needed to try the extension in a real editor, made ready in one step. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { type Outcome, succeed } from '../../server/src/base/outcome.ts';
import { findChromium } from './browser.ts';
import { PROJECT_ROOT } from './paths.ts';
import { OLDEST_RELEASE, setUpWorkbench, type Workbench } from './setup-workbench.ts';

export interface EditorUnderTest {
  /** The oldest one: what works there works in the newer ones, as fewer tests show. */
  readonly workbench: Workbench;
  readonly chromium: string;
  /** The extension, packed as it is published. */
  readonly vsix: string;
}

/** The editor and the extension packed into the folder, or one sentence that says what this machine lacks. */
export function prepareEditor(folder: string, say: (line: string) => void): Outcome<EditorUnderTest, string> {
  const chromium = findChromium();
  if (!chromium.ok) return chromium;
  const workbench = setUpWorkbench(OLDEST_RELEASE, say);
  if (!workbench.ok) return workbench;
  return succeed({ workbench: workbench.value, chromium: chromium.value, vsix: packExtension(folder) });
}

/** Packs into the folder and returns the file. */
export function packExtension(folder: string): string {
  const vsix = join(folder, 'dewright.vsix');
  const npm = ['run', '--silent', 'package', '--', '--out', vsix];
  execFileSync('npm', npm, { cwd: PROJECT_ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  return vsix;
}
