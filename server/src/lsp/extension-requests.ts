/** What only the extension of this product asks for. */
import { snippetText } from '../features/completion/completion-item.ts';
import { skeletonItem } from '../features/completion/snippets.ts';
import { explain, explainedNames } from '../features/explain.ts';
import type { Served } from './served.ts';

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
