/** Gives a space, point, model, kit, site or anchor another name in every file that uses it. */
import type { FileEdit } from '../../analysis/finding.ts';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { Workspace } from '../../analysis/workspace.ts';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { TextRange } from '../../base/text-range.ts';
import { readAirTemperatureSource } from '../../model/air-temperature-source.ts';
import { siteModelOf } from '../../model/file-models.ts';
import { yamlWord } from '../../syntax/yaml-word.ts';
import { isModelKind, modelIsIn, type NamedThing, type NamePlace, placesOf, thingAt } from './names.ts';
import { type NameKind, occurrencesIn } from './occurrences.ts';

export interface RenamePlace {
  readonly range: TextRange;
  readonly name: string;
}

/** @returns what is renamed there, or one sentence that says why nothing can be */
export function prepareRename(workspace: Workspace, parsed: ParsedFile, offset: number): Outcome<RenamePlace, string> {
  const thing = renamable(workspace, parsed, offset);
  if (!thing.ok) return thing;
  const { range, name } = thing.value.occurrence;
  return succeed({ range, name });
}

export function rename(
  workspace: Workspace,
  parsed: ParsedFile,
  offset: number,
  newName: string,
): Outcome<readonly FileEdit[], string> {
  const thing = renamable(workspace, parsed, offset);
  if (!thing.ok) return thing;
  const { kind, name } = thing.value.occurrence;
  if (newName === name) return succeed([]);
  const everywhere = placesOf(workspace, thing.value);
  const places = kind === 'kit' ? everywhere.filter(({ role }) => role === 'definition') : everywhere;
  const refusal = refusalOf(kind, newName) ?? clashWith(workspace, thing.value, places, newName);
  if (refusal !== undefined) return fail(refusal);
  return succeed(
    places.map((place) => ({ file: place.file, range: place.range, newText: wordAt(workspace, place, newName, kind) })),
  );
}

function renamable(workspace: Workspace, parsed: ParsedFile, offset: number): Outcome<NamedThing, string> {
  const thing = thingAt(workspace, parsed, offset);
  if (thing === undefined) return fail('Only spaces, points, models, kits, sites and anchors can be renamed.');
  const { kind, role, name } = thing.occurrence;
  if (kind === 'log') return fail('A recording is named by its file: rename the file.');
  if (kind === 'kit' && role === 'reference') {
    return fail('A kit is named by its file here: rename the file, and the sites that name it follow.');
  }
  if (thing.home === undefined) return fail(`Nothing of the name “${name}” is defined, so there is nothing to rename.`);
  return succeed(thing);
}

const KEBAB_CASE = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Why a name cannot be given to anything of its kind. */
function refusalOf(kind: NameKind, name: string): string | undefined {
  if (kind === 'anchor') {
    return /^[^\s,[\]{}]+$/.test(name) ? undefined : 'The name of an anchor has no blanks, commas or brackets.';
  }
  if (kind !== 'point') {
    return KEBAB_CASE.test(name)
      ? undefined
      : `“${name}” cannot be a name: names are lower-case letters and digits, joined by hyphens.`;
  }
  if (!/^[^\s"'\\]+$/.test(name)) return 'A tag has no blanks and no quotes.';
  const read = readAirTemperatureSource(name);
  const isTag = read.ok && read.value.value.kind === 'point';
  return isTag
    ? undefined
    : `A report that takes its air temperature from “${name}” would read it as something else than a tag.`;
}

/** Why a name that is good in itself is taken. */
function clashWith(
  workspace: Workspace,
  { occurrence: { kind }, home }: NamedThing,
  places: readonly NamePlace[],
  name: string,
): string | undefined {
  const files = new Set(places.map(({ file }) => file));
  const taken = `“${name}” is given already`;
  if (isModelKind(kind)) {
    const kits = new Set([...files].flatMap((file) => (file === home ? [file] : workspace.kitsOf(file))));
    return [...kits].some((kit) => modelIsIn(workspace, kit, kind, name))
      ? `${taken} in a kit of these sites.`
      : undefined;
  }
  const looked = kind === 'point' || kind === 'site' ? workspace.files('site') : [...files];
  const clashes = looked.some((file) => {
    const parsed = workspace.parsed(file);
    if (parsed === undefined) return false;
    if (kind === 'point') return siteModelOf(parsed.model).points.has(name);
    return occurrencesIn(parsed).some(
      (found) => found.kind === kind && found.role === 'definition' && found.name === name,
    );
  });
  return clashes ? `${taken} to another ${kind}.` : undefined;
}

/** A name that YAML would read as a number needs quotes, where it does not stand in quotes already. */
function wordAt(workspace: Workspace, { file, range }: NamePlace, name: string, kind: NameKind): string {
  const before = workspace.parsed(file)?.text.charAt(range.start - 1);
  return kind === 'anchor' || before === '"' || before === "'" ? name : yamlWord(name);
}
