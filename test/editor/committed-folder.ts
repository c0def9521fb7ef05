/** Makes a folder a repository with one commit, for what is compared with it. */
import { execFileSync } from 'node:child_process';

export function commitFolder(folder: string): void {
  const author = ['-c', 'user.name=x', '-c', 'user.email=x'];
  for (const words of [
    ['init', '-q'],
    ['add', '.'],
    [...author, 'commit', '-q', '-m', 'first'],
  ]) {
    execFileSync('git', words, { cwd: folder, stdio: 'ignore' });
  }
}
