/** Bundles the programs that are shipped, one file each, and says which libraries are inside them. */
import { writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { billOfMaterials, bundledPackages, licenceTexts } from './server/tools/bundled-packages.mjs';

const common = {
  outdir: '.',
  bundle: true,
  minify: true,
  format: 'cjs',
  metafile: true,
  logLevel: 'warning',
};

const onNode = {
  ...common,
  entryPoints: [
    { in: 'server/src/lsp/node.ts', out: 'server/dist/server' },
    { in: 'server/src/cli/main.ts', out: 'server/dist/cli' },
    { in: 'server/src/recording/program.ts', out: 'server/dist/recording' },
  ],
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'], // some libraries' `main` hides its imports from the bundler
  alias: { yaml: './node_modules/yaml/browser/index.js' }, // the same as modules, of which the bundler takes what is used
  external: ['./server.js'], // started by the command line only where it is asked to serve
};

const anywhere = { ...common, platform: 'browser', target: 'es2022' };

const onNodeOrInBrowser = {
  ...anywhere,
  entryPoints: [{ in: 'client/src/extension.ts', out: 'client/dist/extension' }],
  external: ['vscode', 'node:child_process'], // given by the editor; asked for only where there is Node
};

/** Uses nothing of Node, so that one server does for both. */
const hosted = { ...anywhere, entryPoints: [{ in: 'server/src/lsp/hosted.ts', out: 'server/dist/hosted' }] };

/** The script of the pages that views are shown in: plain DOM. */
const viewPage = {
  ...anywhere,
  entryPoints: [{ in: 'client/src/views/page/main.ts', out: 'client/dist/view' }],
  format: 'iife',
};

const built = await Promise.all([onNode, onNodeOrInBrowser, hosted, viewPage].map((options) => build(options)));
const packages = bundledPackages(built.flatMap(({ metafile }) => Object.keys(metafile.inputs)));
writeFileSync('client/dist/third-party-licences.txt', licenceTexts(packages));
writeFileSync('client/dist/sbom.cdx.json', billOfMaterials(packages));
