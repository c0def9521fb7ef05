/** Loads what the TypeScript sources export, bundled in memory. */
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** @param {string} exports lines that export from paths from the project's root */
export async function fromSources(exports) {
  const { outputFiles } = await build({
    stdin: { contents: exports, resolveDir: fileURLToPath(new URL('../../', import.meta.url)) },
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['module', 'main'],
    logLevel: 'error',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}
