/** The handover pack of a site, as text that the extension writes where the user says. */
import { contentsName } from '../../report/contents-name.ts';
import { packHtml } from '../../report/html-pack.ts';
import { packMarkdown } from '../../report/markdown-pack.ts';
import { packFiles, packOf } from '../../report/pack.ts';
import type { Served } from '../served.ts';

interface PackParams {
  readonly uri: string;
  readonly format: 'html' | 'md';
}

export function servePack({ connection, analysisOf }: Served): void {
  connection.onRequest('dewright/pack', async ({ uri, format }: PackParams) => {
    const analysis = await analysisOf(uri);
    if (analysis === undefined) return null;
    const revision = await contentsName(packFiles(analysis).map(([, text]) => text));
    const pack = packOf({ analysis, revision });
    if (pack === undefined) return null;
    return { text: format === 'md' ? packMarkdown(pack) : packHtml(pack) };
  });
}
