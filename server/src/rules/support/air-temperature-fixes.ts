/** Ways to give a report its air temperature, or to do without. */
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { ReportEvaluation } from '../../evaluate/resolved/resolved-point.ts';
import type { Located } from '../../model/located.ts';
import type { Report } from '../../model/model-types.generated.ts';
import { appendPair, type PartEdit, removePair, renameKey, replaceScalar } from '../../syntax/edit.ts';
import type { FixDraft, FixKind } from '../rule.ts';

/** Sets `air-temperature` of a report, whether it has that key yet or not. */
export function assignAirTemperature(report: Located<Report>, source: string): PartEdit | undefined {
  const given = report.value.airTemperature;
  return given === undefined
    ? appendPair(report.cursor, 'air-temperature', source)
    : replaceScalar(given.cursor, source);
}

/** Assigns the point's own air-temperature probe, where it has one. */
export function assignOwnProbe(
  { point }: PointEvaluation,
  report: Located<Report>,
  kind: FixKind,
): readonly FixDraft[] {
  if (point.airTemperatureProbe === undefined) return [];
  const edits = [assignAirTemperature(report, 'air-temperature-probe')];
  return [{ title: 'Take the air temperature from the air-temperature probe', kind, edits }];
}

/** Adds a probe of the first temperature-probe model of the kits and assigns it to every report that lacks a source. */
export function addAirTemperatureProbe(view: PointEvaluation, evaluated: ReportEvaluation): readonly FixDraft[] {
  const model = view.catalogue.temperatureProbes.keys().next().value ?? 'MODEL';
  const point = view.entry.located;
  if (point === undefined || view.point.airTemperatureProbe !== undefined) return [];
  const probe = `{model: ${model}, mounting: {spacing: 100 mm, position: below}}`;
  const assigned = view.reports.filter(
    (other) => other === evaluated || (other.source.kind === 'unassigned' && evaluated.source.kind === 'unassigned'),
  );
  const edits = assigned
    .filter(({ source }) => source.kind !== 'no-such-probe')
    .map(({ report }) => assignAirTemperature(report, 'air-temperature-probe'));
  return [
    {
      title: `Add an air-temperature probe of model ${model} and assign it; it must be fitted on site`,
      kind: 'choice',
      edits: [appendPair(point.cursor, 'air-temperature-probe', probe), ...edits],
    },
  ];
}

/** A heated head can report the dew point. The tolerance goes: it was in another unit. */
export function reportDewPointInstead(
  { point, reports }: PointEvaluation,
  { quantity, report }: ReportEvaluation,
): readonly FixDraft[] {
  const all = point.reports;
  if (all?.cursor.node.kind !== 'map') return [];
  const title = 'Report dew point instead: it needs no air temperature';
  if (reports.some((other) => other.quantity === 'dew-point'))
    return [{ title, kind: 'choice', edits: [removePair(all.cursor, quantity)] }];
  const pair = all.cursor.node.pairs.find((candidate) => candidate.key.text === quantity);
  if (pair === undefined || all.cursor.via !== undefined || report.cursor.via !== undefined) return [];
  const { part } = all.cursor;
  const value = { part, start: pair.value.start, end: pair.value.end, newText: '{}' };
  return [{ title, kind: 'choice', edits: [renameKey(part, pair, 'dew-point'), value] }];
}
