/** Ways to make a name stand for something: another name, a kit that has it, a stub to be filled in. */
import type { Entries } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import { appendPair, replaceScalar } from '../../syntax/edit.ts';
import { appendItem } from '../../syntax/edit-list.ts';
import type { FixDraft, SiteView } from '../rule.ts';
import { hasModel, type ModelKind } from './references.ts';

/** Writes another name in its place; none where there is no such name. */
export function changeTo(name: string | undefined, named: Located<string>): readonly FixDraft[] {
  if (name === undefined) return [];
  return [{ title: `Change to ${name}`, kind: 'choice', edits: [replaceScalar(named.cursor, name)] }];
}

/** Names a kit of the workspace that has the model. */
export function nameKitThatHas(view: SiteView, kind: ModelKind, id: string): readonly FixDraft[] {
  const { header } = view.model;
  if (header === undefined) return [];
  const kits = header.value.kits;
  return view
    .otherKits()
    .filter(({ kit }) => hasModel(kit, kind, id))
    .map(({ name }) => ({
      title: `Name the kit ${name}, which has ${id}`,
      kind: 'choice',
      edits: [kits === undefined ? appendPair(header.cursor, 'kits', `[${name}]`) : appendItem(kits.cursor, name)],
    }));
}

/** Adds a space below the others, its air to be filled in. */
export function defineSpace({ model }: SiteView, id: string): readonly FixDraft[] {
  const last = [...model.spaces.values()].at(-1);
  if (last === undefined) return [];
  const stub = '{air: {temperature: , humidity: }}';
  return [
    { title: `Define the space ${id}, to be filled in`, kind: 'choice', edits: [appendPair(last.map, id, stub)] },
  ];
}

/** Adds a model below others of its kind, in the first kit that has such. */
export function defineModel({ kits }: SiteView, kind: ModelKind, id: string): readonly FixDraft[] {
  for (const { file, kit, named } of kits) {
    const models: Entries<unknown> | undefined = kit?.[kind];
    const last = [...(models?.values() ?? [])].at(-1);
    if (last === undefined) continue;
    const edit = appendPair(last.map, id, kind === 'receivers' ? '{input: }' : '{}');
    const title = `Define ${id} in ${named.value}, its data to be filled in`;
    return [{ title, kind: 'choice', edits: [edit && { ...edit, file }] }];
  }
  return [];
}
