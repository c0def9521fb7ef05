import type { AlarmUse } from '../evaluate/alarm-use.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { carriersShortOf, limitWords } from './support/alarm-views.ts';

export const rule: Rule = {
  name: 'alarm-outside-span',
  group: 'Outputs and alarms',
  severity: 'error',
  title: 'The limit of an alarm lies outside what the signals of its quantity carry.',
  why: 'The controller sees no more than the span or register carries. A limit beyond its end is never passed, or always: the alarm never sounds, or never stops.',
  mend: 'Widen the span, or move the limit inside it.',
  leavesAlone: 'Alarms whose quantity no signal carries, and those that one signal carries far enough.',
  sources: ['common practice, no source'],
  facts: ['SIGNAL/lowest-value', 'SIGNAL/highest-value'],
  fixes: [],
  check: { point: (view) => view.alarms.flatMap((alarm) => outside(view, alarm)) },
};

function outside(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const carriers = carriersShortOf(view, alarm);
  if (carriers === undefined) return [];
  const { dimension, title } = quantityInfo(alarm.quantity);
  const spans = carriers.map(
    ({ name, carries }) => `${name} carries only ${showRange(carries.low, carries.high, dimension)}`,
  );
  const [limit, isAbove] = [alarm.limit.value.value, alarm.direction === 'above'];
  const isPassed = carriers.every(({ carries }) => (limit < carries.low ? isAbove : !isAbove));
  return [
    {
      message: `The alarm ${alarm.name} is set ${limitWords(alarm)}, and of the ${title} ${spans.join(' and ')}: the alarm ${isPassed ? 'always' : 'never'} sounds. Widen the span or move the limit.`,
      origin: alarm.limit.origin,
      related: carriers.map(({ name, located }) => ({
        message: `${name} is here.`,
        origin: located.keyOrigin ?? located.origin,
      })),
    },
  ];
}
