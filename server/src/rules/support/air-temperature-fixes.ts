/** Ways to give a report its air temperature, or to do without. */
import { isKnown } from '../../evaluate/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { Located } from '../../model/located.ts';
import type { Report } from '../../model/model-types.generated.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { QuantityName } from '../../quantity/quantity-names.ts';
import { appendPair, removePair, renameKey, replaceScalar } from '../../syntax/edit.ts';
import type { FixDraft } from '../rule.ts';

/** Sets `air-temperature` of a report, whether it has that key yet or not. */
export function assignAirTemperature(report: Located<Report>, source: string) {
  const given = report.value.airTemperature;
  return given === undefined
    ? appendPair(report.cursor, 'air-temperature', source)
    : replaceScalar(given.cursor, source);
}

/** Adds a probe of the first temperature-probe model of the kits, 100 mm below, and assigns it. */
export function addAirTemperatureProbe(view: PointEvaluation, report: Located<Report>): readonly FixDraft[] {
  const model = view.catalogue.temperatureProbes.keys().next().value ?? 'MODEL';
  const point = view.entry.located;
  if (point === undefined || view.point.airTemperatureProbe !== undefined) return [];
  const probe = `{model: ${model}, mounting: {spacing: 100 mm, position: below}}`;
  const assign =
    report.value.airTemperature?.value.kind === 'air-temperature-probe'
      ? []
      : [assignAirTemperature(report, 'air-temperature-probe')];
  return [
    {
      title: `Add an air-temperature probe of model ${model} and assign it; it must be fitted on site`,
      kind: 'choice',
      edits: [appendPair(point.cursor, 'air-temperature-probe', probe), ...assign],
    },
  ];
}

/** A heated head can report the dew point. The tolerance goes: it was in another unit. */
export function reportDewPointInstead(view: PointEvaluation, quantity: QuantityName): readonly FixDraft[] {
  const reports = view.point.reports;
  const report = reports?.value.get(quantity);
  if (reports === undefined || report === undefined) return [];
  const others = view.reports.some((other) => other.quantity === 'dew-point');
  const pair =
    reports.cursor.node.kind === 'map'
      ? reports.cursor.node.pairs.find((candidate) => candidate.key.text === quantity)
      : undefined;
  if (pair === undefined || reports.cursor.via !== undefined || report.origin.definedAt !== undefined) return [];
  const title = 'Report dew point instead: it needs no air temperature';
  if (others) return [{ title, kind: 'choice', edits: [removePair(reports.cursor, quantity)] }];
  const { part } = reports.cursor;
  const value = { part, start: pair.value.start, end: pair.value.end, newText: '{}' };
  return [{ title, kind: 'choice', edits: [renameKey(part, pair, 'dew-point'), value] }];
}

/** Only where the unheated sensor stays dry. */
export function switchHeaterOff(view: PointEvaluation): readonly FixDraft[] {
  const humidity = view.facts.get('humidity-at-sensor-unheated');
  const mode = view.heater.located?.value.mode;
  const limit = view.settings.unheatedHumidityLimit.value;
  if (!isKnown(humidity) || humidity.value > limit || mode === undefined) return [];
  const shown = showQuantity(humidity.value, 'relative-humidity');
  return [
    {
      title: `Switch the heater off: the unheated sensor sees at most ${shown}`,
      kind: 'choice',
      edits: [replaceScalar(mode.cursor, 'off')],
    },
  ];
}
