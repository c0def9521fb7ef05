/** What only the extension of this product asks for. */

import { explain, explainedNames } from '../../features/reading/explain.ts';
import { snippetText } from '../../features/writing/completion/completion-item.ts';
import { skeletonItem } from '../../features/writing/completion/snippets.ts';
import type { Served } from '../served.ts';

export function serveExtension({ connection, analysisOf }: Served): void {
  connection.onRequest('dewright/siteSkeleton', () => ({ snippet: snippetText(skeletonItem('site').insert) }));
  connection.onRequest('dewright/countPoints', async ({ uri }: { readonly uri: string }) => {
    const content = (await analysisOf(uri))?.content;
    return { points: content?.kind === 'site' ? content.site.points.size : null };
  });
  connection.onRequest('dewright/explain', ({ name }: { readonly name: string }) => {
    const markdown = explain(String(name));
    return markdown === undefined ? null : { markdown };
  });
  connection.onRequest('dewright/explainNames', () => explainedNames().rules);
}
