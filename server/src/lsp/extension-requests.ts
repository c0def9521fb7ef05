/** What only the extension of this product asks for. */
import { snippetText } from '../features/completion/completion-item.ts';
import { skeletonItem } from '../features/completion/snippets.ts';
import type { Served } from './served.ts';

export function serveExtension({ connection, analysisOf }: Served): void {
  connection.onRequest('dewright/siteSkeleton', () => ({ snippet: snippetText(skeletonItem('site').insert) }));
  connection.onRequest('dewright/countPoints', async ({ uri }: { readonly uri: string }) => {
    const content = (await analysisOf(uri))?.content;
    return { points: content?.kind === 'site' ? content.site.points.size : null };
  });
}
