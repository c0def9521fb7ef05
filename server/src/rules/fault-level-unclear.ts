import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import type { SignalUse } from '../evaluate/resolved/signal-use.ts';
import {
  failureCurrents,
  faultCurrent,
  faultLevel,
  type GivenFaultLevel,
  isOwnReading,
} from '../evaluate/signals/fault-level.ts';
import { showQuantity, writeQuantity } from '../quantity/format-quantity.ts';
import { appendPair, replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';

export const rule: Rule = {
  name: 'fault-level-unclear',
  group: 'Outputs and alarms',
  severity: 'warning',
  title:
    'The current that a loop shows on a fault can be taken for a reading, or is not given where an alarm depends on it.',
  why: 'By NAMUR NE 43 a current from 3.8 to 20.5 mA is a reading; up to 3.6 mA or from 21 mA on it is a fault. A fault that looks like a reading is never noticed, and an alarm that depends on it stays silent.',
  mend: 'Let the output go to 3.6 mA or 21 mA on a fault, and let the receiver report it. A loop that begins at 0 mA has 21 mA alone.',
  leavesAlone: 'Loops without a fault current that feed no alarm.',
  sources: ['NAMUR NE 43'],
  facts: [faultCurrent],
  fixes: ['choice'],
  check: { point: (view) => view.signals.flatMap((use) => unclear(view, use)) },
};

function unclear(view: PointEvaluation, use: SignalUse): readonly FindingDraft[] {
  const fault = faultLevel(use, view.settings);
  const alarm = view.alarms.find(({ quantity }) => quantity === use.quantity);
  const fixes = () => showFaultAs(use, alarm);
  const { name } = use;
  if (fault?.kind === 'not-given') {
    if (alarm === undefined) return [];
    return [
      {
        message: () =>
          `${name} feeds the alarm ${alarm.name} and does not say what it shows on a fault: a failed probe may leave the alarm silent. ${mendWords(use)}, outside the readings of NAMUR NE 43.`,
        origin: use.located.keyOrigin ?? use.located.origin,
        related: () => [
          { message: `The alarm ${alarm.name} is here.`, origin: alarm.located.keyOrigin ?? alarm.located.origin },
        ],
        fixes,
      },
    ];
  }
  const why = fault?.kind === 'given' ? whyUnclear(use, fault) : undefined;
  const fact = view.facts.get(faultCurrent(name));
  if (fault?.kind !== 'given' || why === undefined || !isKnown(fact)) return [];
  const { given, byDefault } = fault;
  return [
    {
      message: () => `On a fault ${name} goes to ${showFact(fact)}, ${why}. ${mendWords(use)}.`,
      origin: byDefault ? (use.located.keyOrigin ?? use.located.origin) : given.origin,
      facts: [fact],
      related: () => (byDefault ? [{ message: 'The defaults of the site say so here.', origin: given.origin }] : []),
      fixes,
    },
  ];
}

/** Undefined where every input takes it for a fault. */
function whyUnclear(use: SignalUse, { level, given }: GivenFaultLevel): string | undefined {
  if (level === 'measuring')
    return 'inside the readings of NAMUR NE 43, 3.8 to 20.5 mA, so that a fault looks like a reading';
  if (isOwnReading(use, given.value.value))
    return 'which this loop shows as a reading too, so that a fault looks like one';
  return level === 'failure-low' || level === 'failure-high'
    ? undefined
    : 'between the readings and the faults of NAMUR NE 43, so that not every input takes it for a fault';
}

/** A loop that carries readings beyond both levels has none left to tell a fault by. */
function mendWords(use: SignalUse): string {
  const currents = failureCurrents(use).map(({ current }) => showQuantity(current, 'current'));
  return currents.length === 0
    ? 'Let it carry 4 to 20 mA and go to 3.6 mA or 21 mA'
    : `Let it go to ${currents.join(' or ')}`;
}

/** The level that also trips the alarm comes first: a fault is then noticed even where nobody looks for one. */
function showFaultAs(use: SignalUse, alarm: AlarmUse | undefined): readonly FixDraft[] {
  const { located } = use;
  const signal = located.value;
  if (signal.kind !== 'current-loop') return [];
  const tripping = failureCurrents(use).filter(({ trips }) => trips === alarm?.direction);
  return [...new Set([...tripping, ...failureCurrents(use)])].map(({ current, trips }) => {
    const too = trips === alarm?.direction ? `; that trips the alarm ${alarm.name} too` : '';
    const text = writeQuantity(current, 'current');
    return {
      title: `Show a fault as ${showQuantity(current, 'current')}${too}`,
      kind: 'choice',
      edits: [
        signal.onFault === undefined
          ? appendPair(located.cursor, 'on-fault', text)
          : replaceScalar(signal.onFault.cursor, text),
      ],
    };
  });
}
