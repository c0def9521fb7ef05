/** Names in a visit file that stand for nothing: its site, the points, quantities, steps and settings of it, and salts. */
import { nearestWord } from '../../base/nearest.ts';
import type { EvaluatedSite } from '../../evaluate/evaluated-site.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { isNamedAsLog } from '../../evaluate/recorded/visited-recording.ts';
import { SALT_NAMES, saltUsed } from '../../evaluate/resolved/salt-choices.ts';
import { handoverSteps, stepOfKey } from '../../handover/plan.ts';
import { stepKeys } from '../../handover/step.ts';
import type { VisitModel } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type { Reading, Step } from '../../model/model-types.generated.ts';
import type { Entry } from '../../model/read-file.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { replaceInScalar } from '../../syntax/edit.ts';
import type { FindingDraft, VisitedSite, VisitView } from '../rule.ts';
import { changeTo } from './reference-fixes.ts';
import { settingsNotThere } from './visit-settings.ts';

export function unknownInVisit(view: VisitView): readonly FindingDraft[] {
  const { model, visited } = view;
  return [
    ...siteNotTold(visited),
    ...notNamedAsLog(model.log),
    ...model.readings.flatMap(({ value }) => saltNotThere(value)),
    ...(visited.state === 'found' ? unknownOfSite(model, visited.site) : []),
    ...(visited.state === 'found' ? spaceNotThere(model.logSpace, visited.site) : []),
    ...settingsNotThere(view),
  ];
}

function notNamedAsLog(log: Located<string> | undefined): readonly FindingDraft[] {
  if (log === undefined || isNamedAsLog(log.value)) return [];
  const message = () =>
    `“${log.value}” is not named as a recording is, *.csv, *.tsv, *.txt or *.parquet, so that it is not read.`;
  return [{ message, origin: log.origin }];
}

function siteNotTold(visited: VisitedSite): readonly FindingDraft[] {
  if (visited.state === 'missing') {
    const { named, siteIds } = visited;
    const near = nearestWord(named.value, siteIds)?.word;
    const then =
      near === undefined ? 'Nothing of this visit can be compared with its site.' : `The nearest is “${near}”.`;
    return [
      {
        message: () => `“${named.value}” is the id of no site that is known here. ${then}`,
        origin: named.origin,
        fixes: () => changeTo(near, named),
      },
    ];
  }
  if (visited.state !== 'ambiguous') return [];
  const { named, sites } = visited;
  return [
    {
      message: () =>
        `“${named.value}” is the id of ${sites.length} sites, and nobody can tell which of them was visited. Give each site an id of its own.`,
      origin: named.origin,
      related: () => sites.map(({ file, origin }) => ({ message: 'This site has the id.', file, origin })),
    },
  ];
}

/** A site of which not every point can be seen may have what is named. */
function unknownOfSite(model: VisitModel, site: EvaluatedSite): readonly FindingDraft[] {
  if (site.model.brokenKeys.has('points')) return [];
  const steps = [...model.steps.values()].flatMap(({ located }) => located?.value.point ?? []);
  const named = [...steps, ...[...model.readings, ...model.settings].flatMap(({ value }) => value.point ?? [])];
  return [
    ...named.flatMap((tag) => pointNotThere(tag, site)),
    ...model.readings.flatMap(({ value }) => quantityNotShown(value, site)),
    ...[...model.steps.values()].flatMap((entry) => stepNotThere(entry, site)),
  ];
}

function spaceNotThere(
  named: Located<string> | undefined,
  { model, settings }: EvaluatedSite,
): readonly FindingDraft[] {
  if (named === undefined || model.brokenKeys.has('spaces') || model.spaces.has(named.value)) return [];
  const near = nearestWord(named.value, model.spaces.keys())?.word;
  const site = settings.id ?? 'the site';
  const message = () => `“${named.value}” is no space of ${site}, so that the recording is laid against none.`;
  return [{ message, origin: named.origin, fixes: () => changeTo(near, named) }];
}

function pointNotThere(named: Located<string>, { points, settings }: EvaluatedSite): readonly FindingDraft[] {
  if (points.has(named.value)) return [];
  const near = nearestWord(named.value, points.keys())?.word;
  const then = near === undefined ? 'Name one that is there.' : `The nearest is “${near}”.`;
  const message = () => `“${named.value}” is no point of the site ${settings.id}. ${then}`;
  return [{ message, origin: named.origin, subject: named.value, fixes: () => changeTo(near, named) }];
}

function stepNotThere({ name, keyOrigin, located }: Entry<Step>, { points }: EvaluatedSite): readonly FindingDraft[] {
  const point = points.get(located?.value.point?.value ?? '');
  if (point === undefined || point.entry.broken || stepOfKey(name, point) !== undefined) return [];
  const known = handoverSteps(point).map((step) => step.name);
  const near = nearestWord(name, handoverSteps(point).flatMap(stepKeys))?.word;
  const then = near === undefined ? `Its steps are ${known.join(', ')}.` : `The nearest is “${near}”.`;
  const edit = near === undefined || keyOrigin.definedAt !== undefined ? undefined : { ...keyOrigin, newText: near };
  return [
    {
      message: () => `“${name}” is no step of the handover of ${point.tag}. ${then}`,
      origin: keyOrigin,
      subject: point.tag,
      fixes: () => [{ title: `Change to ${near}`, kind: 'choice', edits: [edit] }],
    },
  ];
}

function quantityNotShown({ point, quantity, using }: Reading, { points }: EvaluatedSite): readonly FindingDraft[] {
  const visited = points.get(point?.value ?? '');
  if (visited === undefined || quantity === undefined || visited.entry.broken) return [];
  const reported = visited.reports.map((report) => report.quantity);
  if (reported.includes(quantity.value) || isShownByProbe(quantity.value, using?.value, visited)) return [];
  const { title } = quantityInfo(quantity.value);
  const shown = reported.length === 0 ? 'It reports nothing.' : `It reports ${reported.join(', ')}.`;
  const message = () => `${visited.tag} does not report the ${title}, so this cannot have been read there. ${shown}`;
  return [{ message, origin: quantity.origin, subject: visited.tag }];
}

/** What a probe shows of itself while it is checked, whether the point reports it or not. */
function isShownByProbe(quantity: string, using: string | undefined, { point, heater }: PointEvaluation): boolean {
  if (quantity === 'relative-humidity') return saltUsed(using) !== undefined;
  return quantity === 'air-temperature' && (point.airTemperatureProbe !== undefined || !heater.on);
}

function saltNotThere({ using, point }: Reading): readonly FindingDraft[] {
  const salt = saltUsed(using?.value);
  if (using === undefined || salt === undefined || SALT_NAMES.some((known) => known === salt)) return [];
  const near = nearestWord(salt, SALT_NAMES)?.word;
  const then = near === undefined ? `Known are ${SALT_NAMES.join(', ')}.` : `The nearest is “${near}”.`;
  const { length } = using.value;
  const edit = near === undefined ? undefined : replaceInScalar(using.cursor, length - salt.length, length, near);
  return [
    {
      message: () => `“${salt}” is no salt whose humidity is known. ${then}`,
      origin: using.origin,
      subject: point?.value,
      fixes: () => [{ title: `Change to ${near}`, kind: 'choice', edits: [edit] }],
    },
  ];
}
