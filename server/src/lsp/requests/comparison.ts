/** The view that compares a site with an older version of it, or with another site of the workspace. */
import type { Analysis } from '../../analysis/analysis.ts';
import { Workspace } from '../../analysis/workspace.ts';
import { AGAINST, COMMITTED, comparisonView } from '../../views/comparison.ts';
import type { View } from '../../views/view.ts';
import type { Served } from '../served.ts';

export function comparisonOf({ connection, workspace, analysisOf }: Served) {
  return async (uri: string, inputs: Readonly<Record<string, string>>): Promise<View | undefined> => {
    const analysis = await analysisOf(uri);
    if (analysis === undefined) return undefined;
    const others = workspace.files('site').filter((file) => file !== uri);
    const against = others.find((file) => file === inputs[AGAINST]) ?? COMMITTED;
    const before = against === COMMITTED ? await committedAnalysis(uri) : await analysisOf(against);
    return comparisonView({ analysis, before, against, others });
  };

  /** The site and its kits as they were last committed, as the editor gives them. */
  async function committedAnalysis(uri: string): Promise<Analysis | undefined> {
    const old = new Workspace();
    const read = async (file: string): Promise<void> => {
      const request = connection.sendRequest<{ readonly text: string | null }>('dewright/readCommitted', { uri: file });
      const text = (await request.catch(() => undefined))?.text ?? undefined;
      if (text !== undefined) old.set(file, text);
    };
    await read(uri);
    for (const kit of old.kitsOf(uri)) await read(kit);
    return old.analysis(uri);
  }
}
