/** Ways to keep the sensor dry, or to do without the heater. */

import { headDryAtStart, noRiseNeeded, unheatedHumidityLimit } from '../../evaluate/dryness/limits.ts';
import { type KnownFact, showFact } from '../../evaluate/facts/fact.ts';
import { broken, kept } from '../../evaluate/facts/limit.ts';
import { otherModelsThatHeat, ownModelHeats } from '../../evaluate/heated-models.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { showQuantity, writeQuantity } from '../../quantity/format-quantity.ts';
import { appendPair, replaceScalar } from '../../syntax/edit.ts';
import type { FixDraft, RuleEdit } from '../rule.ts';
import { assignAirTemperature } from './air-temperature-fixes.ts';

/** The rise that the sensor needs, as a person would set it; undefined where none is needed or it is not known. */
export function riseWanted(view: PointEvaluation): KnownFact | undefined {
  return broken(noRiseNeeded, view)?.fact;
}

/** Switches the heater of the point's own model on, where that model reaches the rise. */
export function heatContinuously(view: PointEvaluation): readonly FixDraft[] {
  const rise = riseWanted(view);
  if (rise === undefined || !ownModelHeats(view, rise.value)) return [];
  const title = `Heat the sensor continuously, ${showFact(rise)} above the air${airTemperatureWords(view)}`;
  return [{ title, kind: 'choice', edits: [...heaterOn(view, rise), ...takeAirTemperature(view)] }];
}

/** Other models of the kits that keep the sensor dry, with their heaters on. */
export function useHeatedModel(view: PointEvaluation): readonly FixDraft[] {
  const rise = riseWanted(view);
  const model = view.point.humidityProbe?.value.model;
  if (rise === undefined || model === undefined) return [];
  return otherModelsThatHeat(view, rise.value).map(({ id }) => ({
    title: `Use the model ${id} and heat it ${showFact(rise)} above the air${airTemperatureWords(view)}`,
    kind: 'choice',
    edits: [replaceScalar(model.cursor, id), ...heaterOn(view, rise), ...takeAirTemperature(view)],
  }));
}

/** Other models of the kits that reach the rise asked, or else the rise needed; what is asked stays as it is. */
export function useModelThatHeats(view: PointEvaluation): readonly FixDraft[] {
  const model = view.point.humidityProbe?.value.model;
  const rise = view.heater.rise?.value.value ?? riseWanted(view)?.value;
  if (rise === undefined || model === undefined) return [];
  const shown = showQuantity(rise, 'temperature-difference');
  return otherModelsThatHeat(view, rise).map(({ id }) => ({
    title: `Use the model ${id}, which can be ${shown} above the air`,
    kind: 'choice',
    edits: [replaceScalar(model.cursor, id)],
  }));
}

/** Only where the unheated sensor stays dry, and no cold head needs the warmth at the start of a phase. */
export function switchHeaterOff(view: PointEvaluation): readonly FixDraft[] {
  const humidity = kept(unheatedHumidityLimit, view)?.fact;
  const mode = view.heater.located?.value.mode;
  if (humidity === undefined || mode === undefined || startsCold(view)) return [];
  return [
    {
      title: `Switch the heater off: the unheated sensor sees at most ${showFact(humidity)}`,
      kind: 'choice',
      edits: [replaceScalar(mode.cursor, 'off')],
    },
  ];
}

/** True where the head enters some phase colder than the dew point. */
export function startsCold(view: PointEvaluation): boolean {
  return broken(headDryAtStart, view) !== undefined;
}

function heaterOn({ point, heater }: PointEvaluation, rise: KnownFact): readonly (RuleEdit | undefined)[] {
  const text = writeQuantity(rise.value, rise.dimension);
  const { located } = heater;
  const probe = point.humidityProbe;
  if (probe === undefined) return [undefined];
  if (located === undefined)
    return [appendPair(probe.cursor, 'heater', `{mode: continuous, rise: ${text}, set-at: site}`)];
  const { mode, rise: given, setAt } = located.value;
  return [
    mode === undefined ? undefined : replaceScalar(mode.cursor, 'continuous'),
    given === undefined ? appendPair(located.cursor, 'rise', text) : replaceScalar(given.cursor, text),
    ...(setAt === undefined ? [appendPair(located.cursor, 'set-at', 'site')] : []),
  ];
}

/** Reports that take the temperature of the unheated head must take the air's once it is heated. */
function takeAirTemperature(view: PointEvaluation): readonly (RuleEdit | undefined)[] {
  if (view.point.airTemperatureProbe === undefined) return [];
  return ownHeadReports(view).map(({ report }) => assignAirTemperature(report, 'air-temperature-probe'));
}

function airTemperatureWords(view: PointEvaluation): string {
  if (ownHeadReports(view).length === 0) return '';
  return view.point.airTemperatureProbe === undefined
    ? '; the air temperature must then come from a probe of its own'
    : ', and take the air temperature from its own probe';
}

function ownHeadReports({ reports }: PointEvaluation) {
  return reports.filter(({ source }) => source.kind === 'own-head');
}
