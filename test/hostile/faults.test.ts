/** What breaks around the program: the disk, other programs, the clock. Nothing that was written is lost. */
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { startSession } from '../lsp/session.ts';
import { copyOfSamples, temporaryFolder } from '../samples/built-program.ts';

const PROGRAM = fileURLToPath(new URL('../../server/dist/cli.js', import.meta.url));
/** A temperature difference in degrees has a safe fix. */
const SLIP = 'dewright: 1\nsite: {id: a, defaults: {margin: 2 degC}}\n';

describe('a disk that does not take the mended file', () => {
  it('that is full: the old file stands, nothing is left beside it, and one sentence says so', () => {
    const folder = temporaryFolder();
    const text = `${SLIP}# ${'x'.repeat(200_000)}\n`;
    writeFileSync(join(folder, 'a.dewsite.yaml'), text);
    // A limit on the size of a file stands for the full disk: the write fails half way.
    const command = `trap '' XFSZ; ulimit -f 64; exec "${process.execPath}" "${PROGRAM}" fix`;
    const { status, stderr } = spawnSync('bash', ['-c', command], { cwd: folder, encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr).toMatch(/a\.dewsite\.yaml: .*; the file stands as it was\n$/);
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(readFileSync(join(folder, 'a.dewsite.yaml'), 'utf8')).toBe(text);
    expect(readdirSync(folder)).toEqual(['a.dewsite.yaml']);
  });

  it('a folder that takes no new files: the old file stands, and one sentence says so', () => {
    const folder = temporaryFolder();
    const sites = join(folder, 'sites');
    mkdirSync(sites);
    writeFileSync(join(sites, 'a.dewsite.yaml'), SLIP);
    cpSync(dirname(PROGRAM), join(folder, 'dist'), { recursive: true });
    for (const path of [folder, dirname(folder)]) chmodSync(path, 0o755);
    chmodSync(sites, 0o555);
    // The administrator may write anywhere, so the program runs as nobody then.
    const asNobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
    const { status, stderr } = spawnSync(process.execPath, [join(folder, 'dist', 'cli.js'), 'fix'], {
      cwd: sites,
      encoding: 'utf8',
      ...asNobody,
    });
    expect({ status, stderr: stderr.replace(/^.*sites\//, '') }).toEqual({
      status: 2,
      stderr: 'a.dewsite.yaml: access is not allowed; the file stands as it was\n',
    });
    expect(readFileSync(join(sites, 'a.dewsite.yaml'), 'utf8')).toBe(SLIP);
  });
});

describe('a kit', () => {
  const SITE = 'file:///site.dewsite.yaml';
  const KIT = 'file:///kits/k.dewkit.yaml';
  const FILES = {
    [SITE]: 'dewright: 1\nsite: {id: a, kits: [kits/k.dewkit.yaml]}\n',
    [KIT]: 'dewright: 1\nkit: {id: k}\n',
  };

  it('that is deleted is missed, and once restored it is found again', async () => {
    const files: Record<string, string> = { ...FILES };
    const session = await startSession({ files, capabilities: { textDocument: { diagnostic: {} } } });
    const rules = async (): Promise<readonly unknown[]> => {
      const report = await session.editor.sendRequest<{ readonly items: readonly { readonly code: string }[] }>(
        'textDocument/diagnostic',
        { textDocument: { uri: SITE } },
      );
      return report.items.map(({ code }) => code);
    };
    const tell = (type: 1 | 3): Promise<void> =>
      session.editor.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: KIT, type }] });
    await session.open(SITE, FILES[SITE]);
    expect(await rules()).toEqual([]);
    delete files[KIT];
    await tell(3);
    await expect.poll(rules).toEqual(['reference-unknown']);
    files[KIT] = FILES[KIT];
    await tell(1);
    await expect.poll(rules).toEqual([]);
    await session.end();
  });
});

it('a clock that jumps, forward and back: each day gets its own findings', () => {
  const SITE = 'file:///site.dewsite.yaml';
  let today = '2026-06-01';
  const workspace = new Workspace({ today: () => today });
  const text = readFileSync(join(copyOfSamples(), 'timber-kilns.dewsite.yaml'), 'utf8').replace(/kits: .*/, 'kits: []');
  workspace.set(SITE, text);
  const due = (): number => workspace.analysis(SITE)?.findings.filter(({ rule }) => rule === 'check-due').length ?? -1;
  const first = due();
  const seen = ['2039-01-01', '1970-01-01', '9999-12-31', '2026-06-01'].map((day) => {
    today = day;
    return due();
  });
  expect(seen[0]).toBeGreaterThan(first);
  expect(seen[1]).toBe(0);
  expect(seen[2]).toBe(seen[0]);
  expect(seen[3]).toBe(first);
});

describe('two editors on one file', () => {
  it('each sees its own text, and what the other saved counts once this one closes it', async () => {
    const uri = 'file:///site.dewsite.yaml';
    const files: Record<string, string> = { [uri]: 'dewright: 1\nsite: {id: a}\n' };
    const sessions = await Promise.all([startSession({ files }), startSession({ files })]);
    const symbols = async (index: 0 | 1): Promise<string> =>
      JSON.stringify(
        await sessions[index].editor.sendRequest('textDocument/documentSymbol', { textDocument: { uri } }),
      );
    await Promise.all(sessions.map(({ open }) => open(uri, files[uri] ?? '')));
    const saved = 'dewright: 1\nsite: {id: a}\nspaces: {kiln-9: {}}\n';
    await sessions[0].change(uri, saved);
    files[uri] = saved;
    await sessions[1].editor.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
    expect(await symbols(0)).toContain('kiln-9');
    expect(await symbols(1)).not.toContain('kiln-9');
    await sessions[1].editor.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await expect.poll(() => symbols(1)).toContain('kiln-9');
    await Promise.all(sessions.map(({ end }) => end()));
  });

  it('what an editor saves while files are mended is not written over', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'a.dewsite.yaml'), SLIP);
    // The other editor saves right after the program has read the file.
    const editor = `
      const fs = require('node:fs');
      const read = fs.readFileSync;
      fs.readFileSync = (path, ...rest) => {
        const text = read(path, ...rest);
        if (String(path).endsWith('a.dewsite.yaml')) fs.writeFileSync(path, 'saved by the other');
        return text;
      };`;
    writeFileSync(join(folder, 'editor.cjs'), editor);
    const words = ['--require', join(folder, 'editor.cjs'), PROGRAM, 'fix'];
    const { status, stderr } = spawnSync(process.execPath, words, { cwd: folder, encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr).toMatch(/a\.dewsite\.yaml: changed while it was being mended; nothing was written\n$/);
    expect(readFileSync(join(folder, 'a.dewsite.yaml'), 'utf8')).toBe('saved by the other');
  });
});
