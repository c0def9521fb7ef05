/** The handover pack of a site, as text that the extension writes where the user says. */
import type { Analysis } from '../analysis/analysis.ts';
import { packHtml } from '../report/html-pack.ts';
import { packMarkdown } from '../report/markdown-pack.ts';
import { packFiles, packOf } from '../report/pack.ts';
import type { Served } from './served.ts';

interface PackParams {
  readonly uri: string;
  readonly format: 'html' | 'md';
}

export function servePack({ connection, analysisOf }: Served): void {
  connection.onRequest('dewright/pack', async ({ uri, format }: PackParams) => {
    const analysis = await analysisOf(uri);
    if (analysis === undefined) return null;
    const pack = packOf({ analysis, revision: await contentsOf(analysis) });
    if (pack === undefined) return null;
    return { text: format === 'md' ? packMarkdown(pack) : packHtml(pack) };
  });
}

const DIGITS = 12;

/** As the command line names contents that are in no commit: by the hash of all files. */
async function contentsOf(analysis: Analysis): Promise<string> {
  const texts = packFiles(analysis).map(([, text]) => `${text}\0`);
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(texts.join('')));
  const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `contents ${hex.slice(0, DIGITS)}`;
}
