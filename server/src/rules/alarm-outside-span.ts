import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
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
  facts: [],
  fixes: [],
  check: { point: (view) => view.alarms.flatMap((alarm) => outside(view, alarm)) },
};

function outside(view: PointEvaluation, alarm: AlarmUse): readonly FindingDraft[] {
  const carriers = carriersShortOf(view, alarm);
  if (carriers === undefined) return [];
  const { dimension, title } = quantityInfo(alarm.quantity);
  const isAbove = alarm.direction === 'above';
  const sounds = carriers.map(({ name, carries: { low, high } }) => {
    const isPassed = alarm.limit.value.value < low === isAbove;
    return `by ${name}, which carries only ${showRange(low, high, dimension)}, it ${isPassed ? 'always' : 'never'} sounds`;
  });
  return [
    {
      message: () =>
        `The alarm ${alarm.name} on the ${title} is set ${limitWords(alarm)}: ${sounds.join(', and ')}. Widen the span or move the limit.`,
      origin: alarm.limit.origin,
      related: () =>
        carriers.map(({ name, located }) => ({
          message: `${name} is here.`,
          origin: located.keyOrigin ?? located.origin,
        })),
    },
  ];
}
