import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import psychrolib from 'psychrolib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const PROGRAM = join(process.cwd(), 'server/dist/cli.js'); // `npm test` builds it
const USER = join(process.cwd(), 'test/lsp/neovim-user.lua');
const SITE_FILE = 'fennmoor.dewsite.yaml';

interface Finding {
  readonly rule: string;
  readonly source: string;
  readonly severity: number;
  readonly line: number;
}

interface Seen {
  readonly findings: readonly Finding[];
  readonly hover: string;
  readonly fixes: readonly string[];
  readonly findings_left: readonly Finding[];
}

const hasNeovim = spawnSync('nvim', ['--version']).status === 0;

describe.skipIf(!hasNeovim && process.env.CI === undefined)(
  'in Neovim, set up as the page on other editors says',
  () => {
    const home = mkdtempSync(join(tmpdir(), 'dewright-neovim-'));
    const folder = join(home, 'site');
    let seen: Seen;

    beforeAll(() => {
      if (!hasNeovim) throw new Error('There is no Neovim for this test: install it, as the command nvim.');
      cpSync('test/editor/workspace', folder, { recursive: true });
      seen = useNeovim(home, folder);
    });
    afterAll(() => rmSync(home, { recursive: true }));

    it('the findings of a site show, those of its kit included', () => {
      expect(seen.findings).toContainEqual({
        rule: 'air-temperature-missing',
        source: 'dewright',
        severity: 1,
        line: 24,
      });
      expect(seen.findings.map(({ rule }) => rule)).not.toContain('reference-unknown'); // as without the kit
    });

    it('a hover shows the highest dew point', () => {
      psychrolib.SetUnitSystem(psychrolib.SI);
      const highest = psychrolib.GetTDewPointFromRelHum(78, 0.88); // the wettest corner of the site file
      expect(seen.hover).toMatch(new RegExp(`Highest dew point: .*${highest.toFixed(1)} °C`));
    });

    it('a fix taken from the list removes its finding and ends on disk', () => {
      expect(seen.fixes).toContainEqual(expect.stringMatching(/^Report dew point instead/));
      expect(seen.findings_left.map(({ rule }) => rule)).not.toContain('air-temperature-missing');
      expect(readFileSync(join(folder, SITE_FILE), 'utf8')).toMatch(/reports:\n +dew-point: .*\n +supply:/);
    });

    it('commands that only the extension of this product knows are not offered', () => {
      expect(seen.fixes.filter((title) => title.startsWith('Explain'))).toEqual([]);
    });
  },
);

function useNeovim(home: string, folder: string): Seen {
  const programs = join(home, 'bin');
  mkdirSync(programs);
  chmodSync(PROGRAM, 0o755);
  symlinkSync(PROGRAM, join(programs, 'dewright'));
  const settings = join(home, 'init.lua');
  writeFileSync(settings, settingsInPage());
  const { stdout, stderr } = spawnSync('nvim', ['--headless', '-u', settings, SITE_FILE, '-c', `luafile ${USER}`], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 60_000,
    env: {
      HOME: home,
      XDG_CACHE_HOME: home,
      XDG_STATE_HOME: home,
      PATH: [programs, process.env.PATH].join(delimiter),
    },
  });
  const line = stdout.split('\n').find((each) => each.startsWith('{'));
  if (line === undefined) throw new Error(`Neovim showed nothing:\n${stdout}\n${stderr}`);
  return JSON.parse(line);
}

/** The configuration of the page for the version of Neovim that is installed. */
function settingsInPage(): string {
  const page = readFileSync('client/other-editors.md', 'utf8');
  const [current = '', older = ''] = [...page.matchAll(/```lua\n(.*?)```/gs)].map(([, code]) => code);
  return `if vim.fn.has('nvim-0.11') == 1 then\n${current}\nelse\n${older}\nend\n`;
}
