/** Bundles the programs that are shipped, one file each, and writes the licences of the libraries inside them. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';

const bundles = [
  { in: 'client/src/extension.ts', out: 'client/dist/extension' },
  { in: 'server/src/lsp/node.ts', out: 'server/dist/server' },
  { in: 'server/src/cli/main.ts', out: 'server/dist/cli' },
];

const { metafile } = await build({
  entryPoints: bundles,
  outdir: '.',
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  mainFields: ['module', 'main'], // some libraries' `main` hides its imports from the bundler
  external: ['vscode', './server.js'], // given by the editor; started by the command line only where it is asked to serve
  metafile: true,
  logLevel: 'warning',
});
writeFileSync('client/dist/third-party-licences.txt', licencesOf(Object.keys(metafile.inputs)));

/** @param {string[]} files */
function licencesOf(files) {
  const packages = new Set(files.flatMap((file) => file.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/) ?? []));
  return [...packages].sort().map(licenceOf).join('\n');
}

/** @param {string} folder */
function licenceOf(folder) {
  const { name, version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${name} is bundled, but its package has no licence file.`);
  return `${name} ${version}\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}\n`;
}
