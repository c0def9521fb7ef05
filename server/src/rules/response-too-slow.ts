import { airTemperatureCost, airTemperatureError } from '../evaluate/air-temperature/cost.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ThermometerKind } from '../evaluate/resolved/thermometer.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { costliestError, costRelated, costWords } from './support/costly-error.ts';
import { mountingOf, probeWords, THERMOMETERS } from './support/mounting.ts';

export const rule: Rule = {
  name: 'response-too-slow',
  group: 'Model limits',
  severity: 'warning',
  title: 'While the air follows its ramp, probes lag by more than the tolerance of a report can spare.',
  why: 'A probe trails a changing air temperature, and two probes of different speed trail by different amounts: what is computed from them is wrong for as long as the ramp lasts.',
  mend: 'Choose faster probes, move the point into faster air, or slow the ramp down.',
  leavesAlone: 'Phases without a ramp or an air speed, and models without a response.',
  sources: [
    'first-order lag; Incropera, section 5.1',
    'a third of the tolerance for one error: common practice, no source',
  ],
  facts: [airTemperatureError.lag, airTemperatureCost.lag],
  fixes: [],
  check: { point: (view) => THERMOMETERS.flatMap((thermometer) => tooSlow(view, thermometer)) },
};

function tooSlow(view: PointEvaluation, thermometer: ThermometerKind): readonly FindingDraft[] {
  const costly = costliestError(view, thermometer, 'lag');
  const { humidityProbe, airTemperatureProbe } = view.point;
  const probe = thermometer === 'own-head' ? humidityProbe?.value : airTemperatureProbe?.value;
  const place = probe?.model ?? mountingOf(view, thermometer);
  const ramp = view.space?.phases.find(({ envelope }) => envelope.phase === costly?.error.at?.phase)?.envelope.located
    .value.ramp;
  if (costly === undefined || place === undefined || ramp === undefined) return [];
  return [
    {
      message: () =>
        `On the ramp the ${probeWords(thermometer)} lags by ${costWords(costly)}. Choose faster probes, or slow the ramp down.`,
      origin: place.origin,
      facts: [costly.error, costly.cost],
      related: () => [{ message: 'The ramp is here.', origin: ramp.origin }, ...costRelated(view, costly)],
    },
  ];
}
