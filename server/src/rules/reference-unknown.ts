import { nearestWord } from '../base/nearest.ts';
import type { FindingDraft, FixDraft, KitReference, Rule, SiteView } from './rule.ts';
import { changeTo, defineModel, defineSpace, nameKitThatHas } from './support/reference-fixes.ts';
import {
  hasModel,
  knownNames,
  MODEL_KINDS,
  type ModelKind,
  type Reference,
  unknownReferences,
} from './support/references.ts';
import { unknownInVisit } from './support/visit-references.ts';

export const rule: Rule = {
  name: 'reference-unknown',
  group: 'Reading the file',
  severity: 'error',
  title: 'A name stands for a site, space, point, model, kit, salt or rule that is not there.',
  why: 'Nothing is known of what the name stands for, and nothing that depends on it is checked.',
  mend: 'Take the name of one that is there, or define it.',
  leavesAlone:
    'Models while a kit that the site names cannot be read, and spaces and points while the YAML around them does not parse: what is named may stand there.',
  sources: ['The file formats; salts: Greenspan, J. Res. NBS 81A (1977) 89 and OIML R 121:1996'],
  facts: [],
  fixes: ['choice'],
  check: {
    site: (view) => [
      ...view.kits.flatMap((kit) => kitNotThere(kit, view)),
      ...unknownReferences(view).map((reference) => notThere(reference, view)),
      ...rulesNotThere(view),
    ],
    visit: unknownInVisit,
  },
};

const WORDS: Readonly<Record<Reference['to'], string>> = {
  space: 'no space of this site',
  point: 'no point of this site',
  salt: 'no salt whose humidity is known',
  humidityProbes: 'no humidity probe of the kits that the site names',
  temperatureProbes: 'no temperature probe of the kits that the site names',
  transmitters: 'no transmitter of the kits that the site names',
  receivers: 'no receiver of the kits that the site names',
};

/** The words that a source of air temperature may be besides a tag. */
const SOURCE_WORDS = ['air-temperature-probe', 'humidity-probe'];

const KIND_WORDS: Readonly<Record<ModelKind, string>> = {
  humidityProbes: 'a humidity probe',
  temperatureProbes: 'a temperature probe',
  transmitters: 'a transmitter',
  receivers: 'a receiver',
};

function notThere(reference: Reference, view: SiteView): FindingDraft {
  const { to, named, subject } = reference;
  const known = [...(to === 'point' ? SOURCE_WORDS : []), ...(knownNames(view)[to]?.keys() ?? [])];
  const near = nearestWord(named.value, known)?.word;
  return {
    message: () =>
      `“${named.value}” is ${WORDS[to]}. ${near === undefined ? whatThen(reference, known, view) : nearestIs(near)}`,
    origin: named.origin,
    subject,
    fixes: () => [...changeTo(near, named), ...definitions(reference, view)],
  };
}

function nearestIs(near: string): string {
  return `The nearest is “${near}”.`;
}

function whatThen({ to, named }: Reference, known: readonly string[], { catalogue, kits }: SiteView): string {
  if (to === 'salt') return `Known are ${known.join(', ')}.`;
  if (to === 'space' || to === 'point') return `Name one that is there, or define it under ${to}s.`;
  const other = MODEL_KINDS.find((kind) => hasModel(catalogue, kind, named.value));
  if (other !== undefined) return `It is ${KIND_WORDS[other]}.`;
  return kits.length === 0
    ? 'The site names no kit; name the kit that has it under kits.'
    : 'Name one that is there, or define it in a kit.';
}

function definitions({ to, named }: Reference, view: SiteView): readonly FixDraft[] {
  if (to === 'space') return defineSpace(view, named.value);
  if (to === 'salt' || to === 'point') return [];
  return [...nameKitThatHas(view, to, named.value), ...defineModel(view, to, named.value)];
}

function kitNotThere({ named, state }: KitReference, view: SiteView): readonly FindingDraft[] {
  if (state === 'loaded') return [];
  const others = view.otherKits().map(({ name }) => name);
  const near = others.length === 1 ? others[0] : nearestWord(named.value, others)?.word;
  const message = () =>
    state === 'missing'
      ? `There is no kit file “${named.value}”, so that no model of it is known. The path is relative to this file.`
      : `“${named.value}” is no kit file. The names of kit files end in .dewkit.yaml.`;
  return [{ message, origin: named.origin, fixes: () => changeTo(near, named) }];
}

function rulesNotThere({ settings, ruleNames }: SiteView): readonly FindingDraft[] {
  return [...settings.ruleSeverities].flatMap(([name, { keyOrigin, origin }]): readonly FindingDraft[] => {
    if (ruleNames.includes(name)) return [];
    const near = nearestWord(name, ruleNames)?.word;
    const at = keyOrigin ?? origin;
    const rename = near === undefined || at.definedAt !== undefined ? undefined : { ...at, newText: near };
    return [
      {
        message: () => `“${name}” is no rule. ${near === undefined ? 'Nothing is changed by it.' : nearestIs(near)}`,
        origin: at,
        fixes: () => [{ title: `Change to ${near}`, kind: 'choice', edits: [rename] }],
      },
    ];
  });
}
