import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';

interface Component {
  readonly name: string;
  readonly version: string;
  readonly purl: string;
}

const BILL = JSON.parse(readFileSync('client/dist/sbom.cdx.json', 'utf8'));
const COMPONENTS: readonly Component[] = BILL.components;
const LICENCES = readFileSync('client/dist/third-party-licences.txt', 'utf8');

const PROGRAMS = [
  'client/src/extension.ts',
  'client/src/views/page/main.ts',
  'server/src/cli/main.ts',
  'server/src/lsp/hosted.ts',
  'server/src/lsp/node.ts',
  'server/src/recording/program.ts',
];

describe('what is said of the libraries inside the programs', () => {
  it('every library that a program imports has its licence and its entry in the bill of materials', async () => {
    const { metafile } = await build({
      entryPoints: PROGRAMS,
      bundle: true,
      write: false,
      metafile: true,
      outdir: 'out',
      platform: 'node',
      packages: 'external',
    });
    const imports = Object.values(metafile.outputs).flatMap((output) => output.imports.map(({ path }) => path));
    const libraries = imports.filter((path) => !/^(?:node:|\.|vscode$|@duckdb\/)/.test(path)).map(packageOf);
    expect(libraries).toContain('yaml');
    const named = COMPONENTS.map(({ name }) => name);
    expect(libraries.filter((library) => !named.includes(library))).toEqual([]);
  });

  it('every library in the bill of materials has its licence in full', () => {
    for (const { name, version } of COMPONENTS) {
      const [, text = ''] = LICENCES.split(`${name} ${version}\n\n`);
      expect(text.slice(0, 200), name).toMatch(/licen[cs]e|copyright/i);
    }
  });

  it('the bill of materials says what npm itself says of them: name, version, licence, address and hash', () => {
    const byNpm = JSON.parse(
      execFileSync('npm', ['sbom', '--package-lock-only', '--sbom-format', 'cyclonedx'], { encoding: 'utf8' }),
    );
    expect(BILL.bomFormat).toBe(byNpm.bomFormat);
    const told = new Map(byNpm.components.map((component: Component) => [component.purl, component]));
    for (const component of COMPONENTS) expect(told.get(component.purl)).toMatchObject(component);
  });
});

function packageOf(path: string): string {
  return path.replace(/^((?:@[^/]+\/)?[^/]+).*$/, '$1');
}
