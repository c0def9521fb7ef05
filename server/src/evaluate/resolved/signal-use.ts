/** What the signals of a point carry: their channels and registers, in the unit of their quantity. */

import { remembered } from '../../base/remembered.ts';
import type { Span } from '../../base/span.ts';
import type { Located } from '../../model/located.ts';
import type {
  CurrentLoopSignal,
  ReceiverModel,
  RegisterFormat,
  RegisterSignal,
  Signal,
  VoltageSignal,
} from '../../model/model-types.generated.ts';
import { analogueCount, registerCount, registerRange } from '../../physics/electrical/resolution.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { ModelRef } from '../equipment/models.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { isUnread } from '../facts/unread.ts';
import type { ResolvedPoint } from './resolved-point.ts';

/** A signal whose quantity can be read. */
export type SignalUse = AnalogueUse | RegisterUse;

interface Carrier {
  /** The terminal or register. */
  readonly name: string;
  readonly located: Located<Signal>;
  readonly quantity: QuantityName;
  /** The values that it can carry, canonical; undefined where its span, or its format and scale, are not known. */
  readonly carries: Span | undefined;
}

export interface AnalogueUse extends Carrier {
  readonly kind: 'analogue';
  readonly signal: CurrentLoopSignal | VoltageSignal;
  readonly span: Located<QuantityRange> | undefined;
  readonly receiver: ModelRef<ReceiverModel> | undefined;
  /** Width of the receiver's input over the width of the signal; undefined without a receiver that reads it. */
  readonly inputPerSignal: number | undefined;
}

export interface RegisterUse extends Carrier {
  readonly kind: 'register';
  readonly signal: RegisterSignal;
  readonly format: RegisterFormat | undefined;
  /** What one count of an integer stands for; of a float, one. In the difference of the quantity, above 0. */
  readonly scale: number | undefined;
}

const USUAL_CURRENT: Span = { low: 4e-3, high: 20e-3 };
const USUAL_VOLTAGE: Span = { low: 0, high: 10 };

export const signalUses = remembered(({ point, catalogue, settings }: ResolvedPoint): readonly SignalUse[] =>
  [...(point.signals?.value ?? [])].flatMap(([name, located]): SignalUse[] => {
    const signal = located.value;
    const quantity = signal.quantity?.value;
    if (quantity === undefined) return [];
    if (signal.kind === 'register') return [registerUse({ name, located, quantity }, signal, settings)];
    const id = signal.receiver?.value ?? settings.header?.defaults?.value.receiver?.value;
    return [analogueUse({ name, located, quantity }, signal, catalogue.receivers.get(id ?? ''))];
  }),
);

type Named = Pick<Carrier, 'name' | 'located' | 'quantity'>;

function analogueUse(
  named: Named,
  signal: CurrentLoopSignal | VoltageSignal,
  receiver: ModelRef<ReceiverModel> | undefined,
): AnalogueUse {
  const { span } = signal;
  const carries = span === undefined || span.value.low === span.value.high ? undefined : span.value;
  const range = analogueRange(named);
  const input = receiver?.model?.value.input?.value;
  const dimension = signal.kind === 'current-loop' ? 'current' : 'voltage';
  const reads = input?.dimension === dimension && range !== undefined && range.high > range.low;
  const inputPerSignal = reads ? (input.high - input.low) / (range.high - range.low) : undefined;
  return { kind: 'analogue', signal, span, carries, receiver, inputPerSignal, ...named };
}

/**
 * The currents or voltages of an analogue signal, A or V; undefined for a register, and where they are written and
 * cannot be read: the usual ones must not stand in.
 */
export function analogueRange({ located }: Pick<Carrier, 'located'>): Span | undefined {
  const signal = located.value;
  if (signal.kind === 'register') return undefined;
  const [key, given, usual] =
    signal.kind === 'current-loop'
      ? ['current', signal.current, USUAL_CURRENT]
      : ['voltage', signal.voltage, USUAL_VOLTAGE];
  return isUnread(located, key, given) ? undefined : (given?.value ?? usual);
}

/** A scale in °C or °F counts degrees; where its zero lies is the unit's. */
function registerUse(named: Named, signal: RegisterSignal, settings: SiteSettings): RegisterUse {
  const ofSite = settings.header?.defaults?.value.registerFormat?.value;
  const format = isUnread(named.located, 'format', signal.format) ? undefined : (signal.format?.value ?? ofSite);
  const written = signal.scale?.value;
  const zero = written?.unit.offset ?? 0;
  const scale = written === undefined || written.value <= zero ? undefined : written.value - zero;
  const use = { kind: 'register', signal, format, scale, ...named } as const;
  if (format === undefined || scale === undefined) return { carries: undefined, ...use };
  const { low, high } = registerRange(format, scale);
  return { carries: { low: low + zero, high: high + zero }, ...use };
}

/**
 * The value of one count, in the difference of the quantity; undefined where bits, or format and scale, are not known.
 * @param magnitude the largest value that is carried: a float is coarsest there
 */
export function countOf(use: SignalUse, magnitude: number): number | undefined {
  if (use.kind === 'register') {
    const { format, scale } = use;
    return format === undefined || scale === undefined ? undefined : registerCount(format, scale, magnitude);
  }
  const bits = use.receiver?.model?.value.bits?.value;
  if (use.carries === undefined || use.inputPerSignal === undefined || bits === undefined) return undefined;
  return analogueCount(use.carries.high - use.carries.low, 1, use.inputPerSignal, bits);
}
