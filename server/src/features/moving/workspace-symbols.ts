/** Finds sites, spaces, points and models of the whole workspace by name or title. */
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { Workspace } from '../../analysis/workspace.ts';
import { remembered } from '../../base/remembered.ts';
import type { TextRange } from '../../base/text-range.ts';
import { kitModelOf, siteModelOf } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type { Entry } from '../../model/read-file.ts';
import type { Origin } from '../../syntax/nodes.ts';

export interface WorkspaceSymbol {
  readonly name: string;
  readonly title: string;
  readonly kind: 'site' | 'space' | 'point' | 'kit' | 'model';
  readonly file: string;
  readonly range: TextRange;
}

/** A list that is longer than this is narrowed by typing, not by reading. */
const MOST_SYMBOLS = 500;

/** @param query letters that stand in the name or title in this order; all symbols where it is empty */
export function workspaceSymbols(workspace: Workspace, query: string): readonly WorkspaceSymbol[] {
  const letters = query.toLowerCase().replace(/\s/g, '');
  const found: WorkspaceSymbol[] = [];
  for (const file of [...workspace.files('site'), ...workspace.files('kit')]) {
    const parsed = workspace.parsed(file);
    if (parsed === undefined) continue;
    for (const { name, title, kind, origin } of namesGiven(parsed)) {
      if (!hasInOrder(name, letters) && !hasInOrder(title, letters)) continue;
      found.push({ name, title, kind, file, range: parsed.rangeOf(origin) });
      if (found.length === MOST_SYMBOLS) return found;
    }
  }
  return found;
}

type GivenName = Omit<WorkspaceSymbol, 'file' | 'range'> & { readonly origin: Origin };

const namesGiven = remembered((parsed: ParsedFile): readonly GivenName[] => {
  if (parsed.kind === 'site') {
    const { header, spaces, points } = siteModelOf(parsed.model);
    return [...headerName('site', header), ...entryNames('space', spaces), ...entryNames('point', points)];
  }
  if (parsed.kind !== 'kit') return [];
  const { header, humidityProbes, temperatureProbes, transmitters, receivers } = kitModelOf(parsed.model);
  const models = [humidityProbes, temperatureProbes, transmitters, receivers];
  return [...headerName('kit', header), ...models.flatMap((entries) => entryNames('model', entries))];
});

interface Titled {
  readonly title?: Located<string>;
}

function headerName(
  kind: 'site' | 'kit',
  header: Located<Titled & { readonly id?: Located<string> }> | undefined,
): readonly GivenName[] {
  const id = header?.value.id;
  if (id === undefined) return [];
  return [{ name: id.value, title: header?.value.title?.value ?? '', kind, origin: id.origin }];
}

function entryNames(
  kind: 'space' | 'point' | 'model',
  entries: ReadonlyMap<string, Entry<Titled>>,
): readonly GivenName[] {
  return [...entries.values()].map(({ name, keyOrigin, located }) => ({
    name,
    title: located?.value.title?.value ?? '',
    kind,
    origin: keyOrigin,
  }));
}

function hasInOrder(text: string, letters: string): boolean {
  let found = 0;
  for (const letter of text.toLowerCase()) if (letter === letters[found]) found++;
  return found === letters.length;
}
