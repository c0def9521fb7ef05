/** Git as a plain child process: no shell, nobody is asked, nothing is fetched, nothing of a repository is run. */
import { execFileSync } from 'node:child_process';

const MOST_BYTES = 64 * 1024 * 1024;
const LONGEST_WAIT = 30_000;

/** What became of a call: what git printed, or that it said no, or that it is not there. */
export type GitAnswer = { readonly said: string } | 'refused' | 'not installed';

export function git(folder: string, ...words: readonly string[]): GitAnswer {
  try {
    const said = execFileSync('git', ['-c', 'core.fsmonitor=false', ...words], {
      cwd: folder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      maxBuffer: MOST_BYTES,
      timeout: LONGEST_WAIT,
      env: { ...process.env, GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_OPTIONAL_LOCKS: '0' },
    });
    return { said };
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT' ? 'not installed' : 'refused';
  }
}
