/** The handover pack of a site, as text that the extension writes where the user says. */
import type { Analysis } from '../analysis/analysis.ts';
import { packHtml } from '../report/html-pack.ts';
import { packMarkdown } from '../report/markdown-pack.ts';
import { packOf } from '../report/pack.ts';
import type { Served } from './served.ts';

interface PackParams {
  readonly uri: string;
  readonly format: 'html' | 'md';
}

export function servePack({ connection, workspace, analysisOf }: Served): void {
  connection.onRequest('dewright/pack', async ({ uri, format }: PackParams) => {
    const analysis = await analysisOf(uri);
    if (analysis === undefined) return null;
    const pack = packOf({ analysis, revision: await contentsOf(analysis, workspace.kitsOf(uri)) });
    if (pack === undefined) return null;
    return { text: format === 'md' ? packMarkdown(pack) : packHtml(pack) };
  });
}

const DIGITS = 12;

/** As the command line names contents that are in no commit: by the hash of the site and its kits. */
async function contentsOf({ parsed, fileNamed }: Analysis, kits: readonly string[]): Promise<string> {
  const texts = [parsed.text, ...kits.flatMap((kit) => fileNamed(kit)?.text ?? [])];
  const bytes = new TextEncoder().encode(texts.map((text) => `${text}\0`).join(''));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const hex = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `contents ${hex.slice(0, DIGITS)}`;
}
