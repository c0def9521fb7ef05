import { humidityAtUnheatedSensor } from '../evaluate/dryness/dryness.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ReportEvaluation } from '../evaluate/resolved/resolved-point.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import {
  addAirTemperatureProbe,
  assignAirTemperature,
  assignOwnProbe,
  reportDewPointInstead,
} from './support/air-temperature-fixes.ts';
import { switchHeaterOff } from './support/heater-fixes.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'air-temperature-missing',
  group: 'Quantities',
  severity: 'error',
  title:
    'A report depends on the air temperature, and nothing measures it: the head is heated, or the probe named is not there.',
  why: 'A heated head knows its own temperature, not that of the air. Relative humidity computed from it reads far too low, and everything else that needs the air temperature is wrong with it.',
  mend: 'Add an unheated air-temperature probe and assign it to the report, or report a quantity that a heated head can give, such as the dew point.',
  leavesAlone:
    'Points that have an air-temperature probe which is only not assigned: air-temperature-unassigned speaks of those. Other points that are not there at all: reference-unknown speaks of those.',
  sources: ['common practice, no source'],
  facts: [humidityAtUnheatedSensor],
  fixes: ['choice'],
  check: { point: (view) => view.reports.flatMap((evaluated) => missing(view, evaluated)) },
};

function missing(view: PointEvaluation, evaluated: ReportEvaluation): readonly FindingDraft[] {
  const { quantity, report, source } = evaluated;
  const { title } = quantityInfo(quantity);
  const origin = report.keyOrigin ?? report.origin;
  const addProbe = addAirTemperatureProbe(view, evaluated);
  if (source.kind === 'other-without-probe') {
    const { tag, entry } = source.other;
    return [
      {
        message: () =>
          `The ${title} takes its air temperature from ${tag}, which has no air-temperature probe. Assign a probe of this point.`,
        origin: report.value.airTemperature?.origin ?? origin,
        related: () =>
          entry === undefined ? [] : [{ message: `${tag} has no air-temperature probe.`, origin: entry.keyOrigin }],
        fixes: () => [...assignOwnProbe(view, report, 'choice'), ...addProbe],
      },
    ];
  }
  if (source.kind === 'no-such-probe' && !view.heater.on) {
    const unheated = {
      title: 'Take the air temperature from the humidity probe, which is not heated',
      kind: 'choice',
      edits: [assignAirTemperature(report, 'humidity-probe')],
    } as const;
    return [
      {
        message: () =>
          `The ${title} takes its air temperature from the air-temperature probe, and the point has none. Add the probe, or take the temperature of the humidity probe, which is not heated.`,
        origin: report.value.airTemperature?.origin ?? origin,
        fixes: () => [...addProbe, ...(view.heater.known ? [unheated] : [])],
      },
    ];
  }
  if (source.kind !== 'no-such-probe' && (source.kind !== 'unassigned' || source.probeThere)) return [];
  return [
    {
      message: () =>
        `The ${title} needs the air temperature, but the head is heated and the point has no air-temperature probe. Add a probe and assign it, or report the dew point instead.`,
      origin,
      related: () => heaterIsOn(view),
      fixes: () => [...addProbe, ...reportDewPointInstead(view, evaluated), ...switchHeaterOff(view)],
    },
  ];
}
