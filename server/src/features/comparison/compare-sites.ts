/** What has changed in meaning between two versions of a site: values, the numbers that follow, and findings. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { SiteEvaluation } from '../../analysis/site-analysis.ts';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Models } from '../../evaluate/equipment/models.ts';
import type { Located } from '../../model/located.ts';
import type { Entry } from '../../model/read-file.ts';
import { subjectFacts } from '../support/subject-facts.ts';
import { usedModels } from '../support/used-models.ts';
import { type ChangedFact, changedFacts } from './changed-facts.ts';
import { type ChangedFinding, changedFindings } from './changed-findings.ts';
import { type ChangedValue, changedValues, type NewNames, newNames } from './changed-values.ts';
import type { PlaceNow } from './place-path.ts';
import { meaningOf, type Renaming, type StatedMap, statementOf } from './statements.ts';

export interface Comparison {
  /** Of the site file, and of the models that both versions use. */
  readonly values: readonly ChangedValue[];
  readonly facts: readonly ChangedFact[];
  readonly findings: readonly ChangedFinding[];
}

/** An analysis of a site file. */
export interface AnalysedSite {
  readonly analysis: Analysis;
  readonly site: SiteEvaluation;
}

/** What can be compared, or why that cannot: of a text that does not parse, whole entries would seem to be gone. */
export function analysedSite(analysis: Analysis | undefined): Outcome<AnalysedSite, string> {
  if (analysis?.content.kind !== 'site') return fail('not a site');
  const { model, lines, rangeOf } = analysis.parsed;
  const broken = model.problems.find(({ rule }) => rule === 'yaml-syntax');
  if (broken === undefined) return succeed({ analysis, site: analysis.content.site });
  const { line } = lines.positionAt(rangeOf(broken.origin).start);
  return fail(`line ${line + 1} does not parse, so that it cannot be compared`);
}

export function compareSites(before: AnalysedSite, after: AnalysedSite): Comparison {
  const [old, now] = [statementOfSite(before.site), statementOfSite(after.site)];
  const names = namesOf(old, now);
  const renaming = renamingFor(names);
  const values = [
    ...changedValues(old.site, now.site, ['site'], renaming),
    ...changedValues(old.spaces, now.spaces, ['spaces'], renaming),
    ...changedValues(old.points, now.points, ['points'], renaming),
    ...changedModels(before.site, after.site),
  ];
  const nowCalled = (subject: string): string => names.points.get(subject) ?? names.spaces.get(subject) ?? subject;
  const nowAt: PlaceNow = ([map, name, ...rest]) => {
    if (map === undefined || name === undefined) return map === undefined ? [] : [map];
    const now = map === 'points' ? names.points : map === 'spaces' ? names.spaces : undefined;
    return [map, now?.get(name) ?? name, ...rest];
  };
  return {
    values,
    facts: factsOfBoth(before.analysis, after.analysis, names, values, nowAt),
    findings: changedFindings(before.analysis, after.analysis, nowCalled, nowAt),
  };
}

interface SiteStatement {
  readonly site: StatedMap;
  readonly spaces: StatedMap;
  readonly points: StatedMap;
}

const NOTHING: StatedMap = { entries: new Map() };

function statementOfSite({ model }: SiteEvaluation): SiteStatement {
  return {
    site: mapOf(['site'], model.header),
    spaces: entriesOf('spaces', model.spaces),
    points: entriesOf('points', model.points),
  };
}

function entriesOf(key: string, entries: ReadonlyMap<string, Entry<unknown>>): StatedMap {
  return { entries: new Map([...entries].map(([name, { located }]) => [name, mapOf([key, name], located)])) };
}

function mapOf(path: readonly string[], located: Located<unknown> | undefined): StatedMap {
  const statement = located === undefined ? NOTHING : statementOf('site', path, located);
  return 'entries' in statement ? statement : NOTHING;
}

interface SiteNames {
  readonly spaces: NewNames;
  readonly points: NewNames;
}

/** A point names its space, and other points: they are followed once their own new names are known. */
function namesOf(before: SiteStatement, after: SiteStatement): SiteNames {
  const spaces = newNames(before.spaces, after.spaces, 'spaces', (meaning) => meaning);
  const named = (points: NewNames): NewNames =>
    newNames(before.points, after.points, 'points', renamingFor({ spaces, points }));
  return { spaces, points: named(named(new Map())) };
}

function renamingFor({ spaces, points }: SiteNames): Renaming {
  const sourceOf = (tag: string): string => meaningOf({ kind: 'point', tag });
  const bySpace = new Map([...spaces].map(([name, now]) => [meaningOf(name), meaningOf(now)]));
  const byPoint = new Map([...points].map(([tag, now]) => [sourceOf(tag), sourceOf(now)]));
  return (meaning, key) => {
    const now = key === 'space' ? bySpace : key === 'air-temperature' ? byPoint : undefined;
    return now?.get(meaning) ?? meaning;
  };
}

/** Of a model that only one version uses, the choice of the model says it. */
function changedModels(before: SiteEvaluation, after: SiteEvaluation): readonly ChangedValue[] {
  const [old, now] = [modelsUsedIn(before), modelsUsedIn(after)];
  return [...now].flatMap(([key, { path, model }]) => {
    const earlier = old.get(key);
    if (earlier === undefined) return [];
    return changedValues(
      statementOf('kit', path, earlier.model),
      statementOf('kit', path, model),
      path,
      (word) => word,
    );
  });
}

interface UsedModel {
  readonly path: readonly string[];
  readonly model: Located<unknown>;
}

function modelsUsedIn({ catalogue, points }: SiteEvaluation): ReadonlyMap<string, UsedModel> {
  const used = usedModels(points.values());
  const sections: readonly (readonly [string, Models<unknown>])[] = [
    ['humidity-probes', catalogue.humidityProbes],
    ['temperature-probes', catalogue.temperatureProbes],
    ['transmitters', catalogue.transmitters],
    ['receivers', catalogue.receivers],
  ];
  const models = sections.flatMap(([section, all]) =>
    [...all.values()].flatMap(({ id, model }) =>
      model === undefined || !used.has(id) ? [] : [[`${section} ${id}`, { path: [section, id], model }] as const],
    ),
  );
  return new Map(models);
}

function factsOfBoth(
  before: Analysis,
  after: Analysis,
  names: SiteNames,
  values: readonly ChangedValue[],
  nowAt: PlaceNow,
): readonly ChangedFact[] {
  const old = new Map(
    subjectFacts(before).map(({ subject, kind, facts }) => {
      const now = kind === 'point' ? names.points : names.spaces;
      return [`${kind} ${now.get(subject) ?? subject}`, facts];
    }),
  );
  return subjectFacts(after).flatMap(({ subject, kind, facts }) => {
    const earlier = old.get(`${kind} ${subject}`);
    return earlier === undefined ? [] : changedFacts(subject, earlier, facts, values, nowAt);
  });
}
