/** An error of the program itself, made by breaking what it computes with before it starts. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { version } from '../../package.json';
import { temporaryFolder } from '../samples/built-program.ts';

const PROGRAM = fileURLToPath(new URL('../../server/dist/cli.js', import.meta.url));
const SITE = `dewright: 1
site: {id: fennmoor}
spaces:
  room: {air: {temperature: 20 .. 30 degC, humidity: 40 .. 60 %RH}}
`;

function brokenRun(variables: NodeJS.ProcessEnv = {}) {
  const folder = temporaryFolder();
  const [breaks, site] = [join(folder, 'breaks.cjs'), join(folder, 'room.dewsite.yaml')];
  writeFileSync(breaks, "Math.exp = () => { throw new RangeError('the exponential is gone'); };");
  writeFileSync(site, SITE);
  const env = { ...process.env, NODE_OPTIONS: '', ...variables };
  return spawnSync(process.execPath, ['--require', breaks, PROGRAM, 'check', site], {
    cwd: folder,
    encoding: 'utf8',
    env,
  });
}

it('is told in one line that can be reported: message, version and file', () => {
  const { status, stdout, stderr } = brokenRun();
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  expect(stderr).toContain(`(version ${version}): the exponential is gone, while looking at file:///`);
  expect(stderr).toContain('room.dewsite.yaml; please report it');
});

it('shows its stack on standard error where DEWRIGHT_STACK asks for it', () => {
  const { stdout, stderr } = brokenRun({ DEWRIGHT_STACK: '1' });
  expect(stdout).toBe('');
  expect(stderr).toMatch(/RangeError: the exponential is gone\n\s+at Math\.exp/);
});

it('whoever stops reading the output gets no error', () => {
  const command = `"${process.execPath}" "${PROGRAM}" check samples --format json | head -c 1`;
  const { stdout, stderr } = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
  expect({ stdout, stderr }).toEqual({ stdout: '{', stderr: '' });
});
