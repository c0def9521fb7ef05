import type { Entries } from '../model/file-models.ts';
import type { Located } from '../model/located.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { FindingDraft, KitView, Rule, SiteView } from './rule.ts';
import { type MissingInput, missingAtPoint, missingInHeader, missingInSpace } from './support/missing-inputs.ts';
import { missingLogKeys } from './support/missing-log-keys.ts';
import { missingOfHumidityProbe, missingOfTemperatureProbe } from './support/missing-model-data.ts';
import { pointsOfSpace } from './support/points-of-space.ts';

export const rule: Rule = {
  name: 'input-missing',
  group: 'Housekeeping',
  severity: 'hint',
  title: 'Something that the file is about to describe cannot be checked, because a value is not given.',
  why: 'No rule fires on guesses: what is not given is not checked, and a file without findings may be one of which little could be checked.',
  mend: 'Give the keys that the message names, or leave them out on purpose: nothing else depends on it.',
  leavesAlone:
    'Everything that the file does not show to be meant: a wall, a supply or a check plan of which nothing is said is not asked for. What a space, the site or a model lacks is told once there, and not at every point.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    site: missingInSite,
    kit: missingInKit,
    point: (view) => toldAt(view.entry.keyOrigin, missingAtPoint(view)),
    visit: missingLogKeys,
  },
};

/** One sentence names no more keys than can be kept in mind. */
const MOST_KEYS = 3;

function missingInSite(view: SiteView): readonly FindingDraft[] {
  const { header } = view.model;
  return [
    ...(header === undefined ? [] : toldAt(header.keyOrigin ?? header.origin, missingInHeader(view))),
    ...view.spaces.flatMap((space) =>
      toldAt(space.keyOrigin, missingInSpace(space, pointsOfSpace(view, space)), space.id),
    ),
  ];
}

function missingInKit({ model, usedModels }: KitView): readonly FindingDraft[] {
  const used = <Model>(models: Entries<Model>, missing: (model: Located<Model>) => readonly MissingInput[]) =>
    [...models.values()].flatMap(({ name, keyOrigin, located, broken }) =>
      located === undefined || broken || usedModels?.has(name) !== true
        ? []
        : toldAt(keyOrigin, missing(located), name),
    );
  return [
    ...used(model.humidityProbes, missingOfHumidityProbe),
    ...used(model.temperatureProbes, missingOfTemperatureProbe),
  ];
}

function toldAt(origin: Origin, missing: readonly MissingInput[], subject?: string): readonly FindingDraft[] {
  if (missing.length === 0) return [];
  const told = missing.slice(0, MOST_KEYS);
  const checks = listed([...new Set(told.map(({ check }) => check))]);
  const sentence = `${checks} could be checked too if ${listed(told.map(({ key }) => key))} were given.`;
  const message = () => sentence.charAt(0).toUpperCase() + sentence.slice(1);
  return [{ message, origin, subject }];
}

/** `a, b and c` */
function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
