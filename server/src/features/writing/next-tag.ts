/** The tag that a person would give next: the number at its end counted on until no point has it. */
import type { Workspace } from '../../analysis/workspace.ts';
import { siteModelOf } from '../../model/file-models.ts';

export function nextFreeTag(workspace: Workspace, tag: string): string {
  const sites = workspace.files('site').flatMap((site) => workspace.parsed(site) ?? []);
  const isTaken = (candidate: string): boolean => sites.some(({ model }) => siteModelOf(model).points.has(candidate));
  const [, stem = tag, digits = ''] = /^(.*?)(\d*)$/.exec(tag) ?? [];
  const width = digits.length;
  const named = (number: number): string => `${width === 0 ? `${tag}-` : stem}${String(number).padStart(width, '0')}`;
  let number = width === 0 ? 2 : Number(digits) + 1;
  while (isTaken(named(number))) number++;
  return named(number);
}
