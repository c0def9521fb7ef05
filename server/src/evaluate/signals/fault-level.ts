/** What a current loop shows on a fault, and how a receiver takes it (NAMUR NE 43). */
import type { Located } from '../../model/located.ts';
import {
  LOOP_LEVELS,
  type LoopLevel,
  loopLevelOf,
  NE43_FAILURE_HIGH,
  NE43_FAILURE_LOW,
} from '../../physics/electrical/current-loop.ts';
import type { AlarmDirection } from '../../physics/metrology/alarm.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { quantityInput } from '../facts/inputs.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { isUnread } from '../facts/unread.ts';
import { signalFact } from '../resolved/point-fact.ts';
import { analogueRange, type SignalUse } from '../resolved/signal-use.ts';
import { signalOf } from './signal-facts.ts';

export type FaultLevel =
  /** Nothing says it, or what says it cannot be read. */
  { readonly kind: 'not-given' } | { readonly kind: 'unread' } | GivenFaultLevel;

export interface GivenFaultLevel {
  readonly kind: 'given';
  readonly level: LoopLevel;
  readonly given: Located<Quantity>;
  /** True where it is the site's default that says it. */
  readonly byDefault: boolean;
}

export interface FailureCurrent {
  /** A. */
  readonly current: number;
  /** The alarms that it trips too. */
  readonly trips: AlarmDirection;
}

const FAILURE_CURRENTS: readonly FailureCurrent[] = [
  { current: NE43_FAILURE_LOW, trips: 'below' },
  { current: NE43_FAILURE_HIGH, trips: 'above' },
];

/** The failure currents that every receiver understands, without those that are readings of this loop. */
export function failureCurrents(use: SignalUse): readonly FailureCurrent[] {
  return FAILURE_CURRENTS.filter(({ current }) => !isOwnReading(use, current));
}

/** True for a current, A, that the loop shows for some value of its quantity: from 0 mA on where it is one of 0 to 20 mA. */
export function isOwnReading(use: SignalUse, current: number): boolean {
  const readings = analogueRange(use);
  return readings !== undefined && current >= readings.low && current <= readings.high;
}

/** Undefined for signals that are no current loops. */
export function faultLevel({ located }: SignalUse, { header }: SiteSettings): FaultLevel | undefined {
  const signal = located.value;
  if (signal.kind !== 'current-loop') return undefined;
  const defaults = header?.defaults;
  const given = signal.onFault ?? defaults?.value.loopOnFault;
  if (isUnread(located, 'on-fault', signal.onFault)) return { kind: 'unread' };
  if (given === undefined)
    return { kind: isUnread(defaults, 'loop-on-fault', defaults?.value.loopOnFault) ? 'unread' : 'not-given' };
  return { kind: 'given', level: loopLevelOf(given.value.value), given, byDefault: signal.onFault === undefined };
}

export const faultCurrent = signalFact('fault-current', {
  title: (name) => `current of ${name} on a fault`,
  dimension: 'current',
  compute: (point, name) => {
    const use = signalOf(point, name);
    const level = use === undefined ? undefined : faultLevel(use, point.settings);
    if (level?.kind !== 'given') return undefined;
    const derivation = () => ({ inputs: quantityInput('on fault', level.given), formulas: [LOOP_LEVELS] });
    return { value: level.given.value.value, derivation };
  },
});
