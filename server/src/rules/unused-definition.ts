import type { KitModel } from '../model/file-models.ts';
import type { Entry } from '../model/read-file.ts';
import { removePair } from '../syntax/edit.ts';
import { removeItem } from '../syntax/edit-list.ts';
import type { FindingDraft, FixDraft, KitView, Rule, SiteView } from './rule.ts';
import { hasModel, isModelKind, MODEL_KINDS, referencesOf, unknownReferences } from './support/references.ts';

export const rule: Rule = {
  name: 'unused-definition',
  group: 'Reading the file',
  severity: 'hint',
  title: 'A space, a model or a kit is there and nothing uses it.',
  why: 'What nothing uses is checked by nobody and grows old: the next reader takes it for something that is installed.',
  mend: 'Remove it, or use it.',
  leavesAlone:
    'Sites without points and kits of which no model is used, which are being written or kept for later; and everything while a name stands for nothing or a file cannot be read, since that may be where it is used.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: { site: unusedInSite, kit: unusedInKit },
};

function unusedInSite(view: SiteView): readonly FindingDraft[] {
  const { model, points } = view;
  const hidden = model.brokenKeys.size > 0 || points.some(({ entry }) => entry.located === undefined);
  if (points.length === 0 || hidden) return [];
  return [...unusedSpaces(view), ...unusedKits(view)];
}

function unusedSpaces({ model, points }: SiteView): readonly FindingDraft[] {
  const used = new Set(points.map(({ point }) => point.space?.value));
  if ([...used].some((id) => id === undefined || !model.spaces.has(id))) return [];
  return [...model.spaces.values()].flatMap((space) =>
    used.has(space.name) ? [] : unused(space, `No point measures in the space ${space.name}.`),
  );
}

function unusedKits(view: SiteView): readonly FindingDraft[] {
  const { kits, model, catalogue } = view;
  if (!catalogue.complete || unknownReferences(view).some(({ to }) => isModelKind(to))) return [];
  const list = model.header?.value.kits;
  const isUsed = (kit: KitModel): boolean =>
    referencesOf(view).some((references) =>
      references.some(({ to, named }) => isModelKind(to) && hasModel(kit, to, named.value)),
    );
  return kits.flatMap(({ kit, named }) => {
    if (list === undefined || kit === undefined || isUsed(kit)) return [];
    return {
      message: () => `No point uses a model of the kit ${named.value}.`,
      origin: named.origin,
      fixes: () => [removal(named.value, removeItem(list.cursor, named.cursor.node.start))],
    };
  });
}

function unusedInKit({ model, usedModels }: KitView): readonly FindingDraft[] {
  const models = MODEL_KINDS.flatMap((kind): readonly Entry<unknown>[] => [...model[kind].values()]);
  if (usedModels === undefined || !models.some(({ name }) => usedModels.has(name))) return [];
  return models.flatMap((entry) =>
    usedModels.has(entry.name) ? [] : unused(entry, `No site of the workspace uses the model ${entry.name}.`),
  );
}

function unused({ name, keyOrigin, map }: Entry<unknown>, message: string): FindingDraft {
  return {
    message: () => message,
    origin: keyOrigin,
    subject: name,
    fixes: () => [removal(name, removePair(map, name))],
  };
}

function removal(name: string, edit: FixDraft['edits'][number]): FixDraft {
  return { title: `Remove ${name}`, kind: 'choice', edits: [edit] };
}
