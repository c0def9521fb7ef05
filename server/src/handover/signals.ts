/** Steps of the handover that prove what leaves the point: outputs forced and read back, fault levels, alarms. */

import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AlarmUse } from '../evaluate/resolved/alarm-use.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import { analogueRange, type SignalUse } from '../evaluate/resolved/signal-use.ts';
import { clearToSet } from '../evaluate/signals/alarm-facts.ts';
import { faultCurrent, faultLevel } from '../evaluate/signals/fault-level.ts';
import { oneCount } from '../evaluate/signals/signal-facts.ts';
import { formatNumber, showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { StepDraft } from './step.ts';
import { cautionOf } from './step-cautions.ts';

export function signalSteps(view: PointEvaluation): readonly StepDraft[] {
  return view.signals.flatMap((use) => [...forced(use, view), ...faultSeen(use, view)]);
}

function forced(use: SignalUse, view: PointEvaluation): readonly StepDraft[] {
  const values = valuesToForce(use, view);
  if (values === undefined) return [];
  const { name, quantity } = use;
  const { dimension, title } = quantityInfo(quantity);
  const middle = (values.low + values.high) / 2;
  const seen = [values.low, middle, values.high].map(
    (value) => `${carriedWords(use, value)} at ${showQuantity(value, dimension)}`,
  );
  const isFloat = use.kind === 'register' && use.format === 'float32';
  const count = isFloat ? undefined : view.facts.get(oneCount(name));
  const within = isKnown(count) ? ` to within one count, ${showFact(count)}` : '';
  return [
    {
      name: `${kebab(name)}-forced`,
      title: `${name} forced and read back`,
      todo: `Force ${name}, the ${title}, to the low end, the middle and the high end of ${use.kind === 'analogue' ? 'its span' : 'what the point reports'}, and read it back at the receiver.`,
      expect: `${seen.join(', ')}; the receiver shows the same${within}.`,
      facts: isKnown(count) ? [count] : [],
      ...cautionOf(view, 'wiring'),
    },
  ];
}

/** The span of an analogue output; of a register what the point can report, since its format holds far more. */
function valuesToForce(use: SignalUse, { facts }: PointEvaluation): { low: number; high: number } | undefined {
  if (use.kind === 'analogue') return analogueRange(use) === undefined ? undefined : use.carries;
  const [lowest, highest] = [facts.get(lowestReported(use.quantity)), facts.get(highestReported(use.quantity))];
  if (use.format === undefined || use.scale === undefined || !isKnown(lowest) || !isKnown(highest)) return undefined;
  const { low = lowest.value, high = highest.value } = use.carries ?? {};
  return { low: Math.max(low, lowest.value), high: Math.min(high, highest.value) };
}

/** `12 mA`, `5 V` or the number that stands in the register. */
function carriedWords(use: SignalUse, value: number): string {
  if (use.kind === 'analogue') {
    const { low = 0, high = 0 } = analogueRange(use) ?? {};
    const { low: from = 0, high: to = 1 } = use.carries ?? {};
    const carried = low + ((value - from) / (to - from)) * (high - low);
    return showQuantity(carried, use.signal.kind === 'current-loop' ? 'current' : 'voltage');
  }
  return formatNumber(registerNumber(use, value), use.format === 'float32' ? 2 : 0);
}

/** A scale in °C or °F counts degrees; where its zero lies is the unit's. */
function registerNumber({ signal, scale = 1 }: Extract<SignalUse, { kind: 'register' }>, value: number): number {
  return (value - (signal.scale?.value.unit.offset ?? 0)) / scale;
}

function faultSeen(use: SignalUse, view: PointEvaluation): readonly StepDraft[] {
  const fault = faultLevel(use, view.settings);
  const fact = view.facts.get(faultCurrent(use.name));
  if (fault?.kind !== 'given' || !isKnown(fact)) return [];
  const { level } = fault;
  const isFailure = level === 'failure-low' || level === 'failure-high';
  const meaning = isFailure
    ? 'The receiver takes that for a failure (NAMUR NE 43) and says so.'
    : 'The receiver must be told to take that for a failure: NAMUR NE 43 does not.';
  return [
    {
      name: `${kebab(use.name)}-fault-seen`,
      title: `Fault level of ${use.name} seen`,
      todo: `Make the instrument signal a fault on ${use.name}, for example by unplugging the probe.`,
      expect: `${use.name} goes to ${showFact(fact)}. ${meaning}`,
      facts: [fact],
      ...cautionOf(view, 'wiring'),
    },
  ];
}

export function alarmSteps(view: PointEvaluation): readonly StepDraft[] {
  return view.alarms.map((alarm) => alarmStep(alarm, view));
}

function alarmStep({ name, located, quantity, direction, limit, clear }: AlarmUse, view: PointEvaluation): StepDraft {
  const { dimension, title } = quantityInfo(quantity);
  const delay = located.value.delay?.value;
  const show = (value: number): string => showQuantity(value, dimension);
  const [at, rising, falling] = [
    show(limit.value.value),
    direction === 'above' ? 'rises' : 'falls',
    direction === 'above' ? 'falls' : 'rises',
  ];
  const later = delay === undefined ? 'at once' : `${showQuantity(delay.value, 'time')} later`;
  const proposed = clear === undefined ? view.facts.get(clearToSet(name)) : undefined;
  const clears = clear === undefined ? (isKnown(proposed) ? proposed.value : undefined) : clear.value.value;
  const set = [
    `${direction} ${at}`,
    ...(clears === undefined ? [] : [`clear at ${show(clears)}`]),
    ...(delay === undefined ? [] : [`delay ${showQuantity(delay.value, 'time')}`]),
  ];
  return {
    name: `${kebab(name)}-proven`,
    title: `Alarm ${name} proven`,
    todo: `Set the alarm ${name} of the ${title}: ${set.join(', ')}. Then bring the reading over the limit and back.`,
    expect: `It comes ${later} when the reading ${rising} past ${at}, and ${clears === undefined ? 'goes when it is back' : `goes when it ${falling} past ${show(clears)}`}; who has to know hears of it.`,
    facts: isKnown(proposed) ? [proposed] : [],
  };
}

/** `AO1` as a part of a step’s name. */
function kebab(name: string): string {
  return name.toLowerCase().replaceAll('_', '-');
}
