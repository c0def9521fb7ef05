import { isUnread } from '../evaluate/facts/unread.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { Located } from '../model/located.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantities.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'signal-not-reported',
  group: 'Outputs and alarms',
  severity: 'error',
  title: 'A signal or an alarm is of a quantity that the point does not report.',
  why: 'A quantity that is not reported has no source of air temperature, no tolerance and no uncertainty: nobody has said how it comes about or how good it must be, and yet something depends on it.',
  mend: 'Report the quantity, or let the signal or alarm use one that is reported.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    point: (view) => [
      ...[...(view.point.signals?.value ?? [])].flatMap(([name, { value }]) =>
        unreported(view, value.quantity, `${name} carries`),
      ),
      ...[...(view.point.alarms?.value ?? [])].flatMap(([name, { value }]) =>
        unreported(view, value.quantity, `The alarm ${name} watches`),
      ),
    ],
  },
};

function unreported(
  view: PointEvaluation,
  quantity: Located<QuantityName> | undefined,
  words: string,
): readonly FindingDraft[] {
  const { point, entry } = view;
  const { reports } = point;
  if (quantity === undefined || isUnread(entry.located, 'reports', reports)) return [];
  const report = reports?.value.get(quantity.value);
  if (report !== undefined || isUnread(reports, quantity.value, report)) return [];
  const { title } = quantityInfo(quantity.value);
  return [
    {
      message: () =>
        `${words} the ${title}, which this point does not report, so that nothing says how it comes about. Report it, or use a quantity that is reported.`,
      origin: quantity.origin,
      fixes: () => reportIt(view, quantity.value),
    },
  ];
}

function reportIt({ entry, point, heater }: PointEvaluation, quantity: QuantityName): readonly FixDraft[] {
  if (entry.located === undefined) return [];
  const { title, needsAirTemperature } = quantityInfo(quantity);
  const assigned = needsAirTemperature && heater.on && point.airTemperatureProbe !== undefined;
  const report = assigned ? '{air-temperature: air-temperature-probe}' : '{}';
  const edit =
    point.reports === undefined
      ? appendPair(entry.located.cursor, 'reports', `{${quantity}: ${report}}`)
      : appendPair(point.reports.cursor, quantity, report);
  return [{ title: `Report the ${title} too; its tolerance is yours to give`, kind: 'choice', edits: [edit] }];
}
