import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { OLDEST_RELEASE } from '../editor/setup-workbench.ts';

const read = (path: string) => JSON.parse(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8'));

it('the oldest VS Code that the manifest allows is the one of the types and the one of the tests', () => {
  const { engines } = read('package.json');
  const types = read('package-lock.json').packages['node_modules/@types/vscode'];
  const minor = OLDEST_RELEASE.version.replace(/\.\d+$/, '');
  expect(engines.vscode).toBe(`^${minor}.0`);
  expect(types.version).toBe(`${minor}.0`);
});
