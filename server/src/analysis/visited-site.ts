/** Finds the site that a visit went to, by the id that the visit names. */
import { siteModelOf, type VisitModel } from '../model/file-models.ts';
import type { SiteIdPlace, VisitedSite } from '../rules/rule.ts';
import type { WorkspaceFacts } from './workspace-facts.ts';

export function visitedSite({ header }: VisitModel, workspace: WorkspaceFacts): VisitedSite {
  const named = header?.value.site;
  if (named === undefined) return { state: 'not-known' };
  const files = workspace.sitesWithId(named.value);
  const [file] = files;
  if (file === undefined) {
    const siteIds = workspace.siteIds();
    return siteIds === undefined ? { state: 'not-known' } : { state: 'missing', named, siteIds };
  }
  if (files.length > 1)
    return { state: 'ambiguous', named, sites: files.flatMap((each) => placeOfId(each, workspace)) };
  const site = workspace.siteEvaluation(file);
  return site === undefined ? { state: 'not-known' } : { state: 'found', site };
}

function placeOfId(file: string, { parsed }: WorkspaceFacts): readonly SiteIdPlace[] {
  const read = parsed(file);
  const id = read === undefined ? undefined : siteModelOf(read.model).header?.value.id;
  return id === undefined ? [] : [{ file, origin: id.origin }];
}
