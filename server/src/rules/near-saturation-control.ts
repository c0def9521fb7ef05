import { toleranceLimit } from '../evaluate/budget/limits.ts';
import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { type Fact, isKnown, type KnownFact, showCorner, showFact } from '../evaluate/facts/fact.ts';
import { broken, kept } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { highestReported } from '../evaluate/resolved/report-range.ts';
import type { ReportEvaluation } from '../evaluate/resolved/resolved-point.ts';
import { depressionAtClear } from '../evaluate/signals/alarm-depression.ts';
import { uncertaintyNearLimit } from '../evaluate/signals/alarm-facts.ts';
import { alarmBelowSaturation, alarmTolerance, belowSaturation, someDepression } from '../evaluate/signals/limits.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { textOf } from '../syntax/cursor.ts';
import { appendPair, renameKey } from '../syntax/edit.ts';
import { contentEnd } from '../syntax/lines.ts';
import type { FindingDraft, FixDraft, Rule, RuleEdit } from './rule.ts';
import { limitWords } from './support/alarm-views.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'near-saturation-control',
  group: 'Quantities',
  severity: 'warning',
  title:
    'A relative humidity is watched, or held to a tolerance, so close to saturation that the uncertainty cannot tell the two apart.',
  why: 'Near saturation every tenth of a kelvin of error in the air temperature is about 0.6 %RH, and the last percents to 100 %RH lie within the uncertainty: saturated air and air that is still fit look the same.',
  mend: 'Use the dew-point depression: how far, in kelvin, the air is from condensing is what the process needs to know, and its tolerance can be judged against the errors of temperature directly.',
  leavesAlone:
    'Reports without a tolerance, or whose uncertainty is larger than it: tolerance-missed speaks of those. Alarms below a limit. Envelopes that are cut at saturation: whether the air gets there is what envelope-saturates asks.',
  sources: ['JCGM 106:2012', 'common practice, no source'],
  facts: [highestReported('relative-humidity'), expandedUncertainty('relative-humidity'), uncertaintyNearLimit],
  fixes: ['choice'],
  check: {
    point: (view) => [
      ...view.reports.flatMap((evaluated) => nearlySaturatedReport(view, evaluated)),
      ...view.alarms.flatMap((alarm) => nearlySaturatedAlarm(view, alarm)),
    ],
  },
};

/** Held against the uncertainty of the same phase: that of another phase may be larger, and says nothing of this air. */
function nearlySaturatedReport(view: PointEvaluation, evaluated: ReportEvaluation): readonly FindingDraft[] {
  const { quantity, report } = evaluated;
  if (quantity !== 'relative-humidity' || report.value.tolerance === undefined) return [];
  const [highest, expanded] = [
    view.facts.get(highestReported(quantity)),
    view.facts.get(expandedUncertainty(quantity)),
  ];
  if (!isKnown(highest) || !isKnown(expanded)) return [];
  // That of the phase is no larger.
  if (kept(belowSaturation(quantity, expanded.value), view) !== undefined) return [];
  const budgets = view.budgets.get(quantity);
  const phase = view.space?.phases.find(({ envelope }) => envelope.phase === highest.at?.phase);
  const there = budgets?.phases().find(({ at }) => at.phase === highest.at?.phase);
  if (there === undefined || phase?.cut !== undefined || broken(toleranceLimit(quantity), view) !== undefined)
    return [];
  if (kept(belowSaturation(quantity, there.expandedUncertainty), view) !== undefined) return [];
  const uncertainty = showQuantity(there.expandedUncertainty, quantityInfo(quantity).difference);
  return [
    {
      message: () =>
        `The relative humidity reaches ${showFact(highest)}${atCorner(highest)}, closer to saturation than its uncertainty of ${uncertainty} at ${showCorner(there.at)}: a tolerance there cannot be told from saturated air. Use the dew-point depression.`,
      origin: report.keyOrigin ?? report.origin,
      facts: there === budgets?.worst ? [highest, expanded] : [highest],
      related: () => worstPhase(view.space, highest),
      fixes: () => reportDepressionInstead(view, evaluated),
    },
  ];
}

function nearlySaturatedAlarm(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const { name, quantity, direction, limit } = alarm;
  const expanded = broken(alarmBelowSaturation(alarm), view)?.fact;
  if (quantity !== 'relative-humidity' || direction !== 'above' || expanded === undefined) return [];
  if (broken(alarmTolerance(alarm), view) !== undefined) return [];
  return [
    {
      message: () =>
        `The alarm ${name} is set ${limitWords(alarm)}, closer to saturation than the uncertainty of ${showFact(expanded)}${atCorner(expanded)}: it cannot tell that limit from saturated air. Watch the dew-point depression.`,
      origin: limit.origin,
      facts: [expanded],
      fixes: () => watchDepressionInstead(view, alarm),
    },
  ];
}

/** The tolerance goes: it was in another unit. */
function reportDepressionInstead(
  { point, reports }: PointEvaluation,
  { report }: ReportEvaluation,
): readonly FixDraft[] {
  const all = point.reports;
  const others = reports.some(({ quantity }) => quantity === 'dew-point-depression');
  if (all?.cursor.node.kind !== 'map' || report.cursor.via !== undefined || others) return [];
  const pair = all.cursor.node.pairs.find(({ key }) => key.text === 'relative-humidity');
  if (pair === undefined) return [];
  const { part } = all.cursor;
  const value = { part, start: pair.value.start, end: contentEnd(part, pair.value), newText: withSourceOf(report) };
  return [
    {
      title: 'Report the dew-point depression instead; its tolerance, in K, is yours to give',
      kind: 'choice',
      edits: [renameKey(part, pair, 'dew-point-depression'), value],
    },
  ];
}

/** A report with the air temperature of another one and nothing else. */
function withSourceOf({ value }: ReportEvaluation['report']): string {
  const { airTemperature } = value;
  return airTemperature === undefined ? '{}' : `{air-temperature: ${textOf(airTemperature.cursor)}}`;
}

/** None at saturation itself: no depression is below 0 K. */
function watchDepressionInstead(view: PointEvaluation, alarm: AlarmUse): readonly FixDraft[] {
  const limit = kept(someDepression(alarm), view)?.fact;
  const clear = view.facts.get(depressionAtClear(alarm.name));
  const report = view.reports.find(({ quantity }) => quantity === 'relative-humidity')?.report;
  const all = view.point.reports;
  const { cursor } = alarm.located;
  if (limit === undefined || all === undefined || report === undefined || cursor.via !== undefined) return [];
  const reported = view.reports.some(({ quantity }) => quantity === 'dew-point-depression');
  const { part, node } = cursor;
  const edits: readonly (RuleEdit | undefined)[] = [
    { part, start: node.start, end: contentEnd(part, node), newText: depressionAlarm(alarm, limit, clear) },
    ...(reported ? [] : [appendPair(all.cursor, 'dew-point-depression', withSourceOf(report))]),
  ];
  const air = limit.at === undefined ? '' : `, the same in air of ${showQuantity(limit.at.airCelsius, 'temperature')}`;
  const title = `Watch the dew-point depression: below ${showFact(limit)}${air}`;
  return [{ title, kind: 'choice', edits }];
}

function depressionAlarm({ located }: AlarmUse, limit: KnownFact, clear: Fact | undefined): string {
  const { delay } = located.value;
  const pairs = [
    'quantity: dew-point-depression',
    `below: ${writeQuantity(limit.value, limit.dimension)}`,
    ...(isKnown(clear) ? [`clear: ${writeQuantity(clear.value, clear.dimension)}`] : []),
    ...(delay === undefined ? [] : [`delay: ${textOf(delay.cursor)}`]),
  ];
  return `{${pairs.join(', ')}}`;
}
