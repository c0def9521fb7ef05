/** Spans and scales that a person would choose instead. */
import { exceeds } from '../../base/rounding.ts';
import type { Span } from '../../base/span.ts';
import type { RegisterFormat } from '../../model/model-types.generated.ts';
import { registerRange } from '../../physics/electrical/resolution.ts';
import { sensibleSpan } from '../../physics/mathematics/sensible-steps.ts';
import { formatNumber } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { fromUsualUnit, inUsualUnit } from '../facts/usual-unit.ts';
import { type AnalogueUse, countOf, type RegisterUse } from '../resolved/signal-use.ts';

export function holds(span: Span, range: Span): boolean {
  return !exceeds(span.low, range.low) && !exceeds(range.high, span.high);
}

/** The span wide enough for a range, its ends round; what it has beyond the range stays. */
export function widenedSpan({ carries, quantity }: AnalogueUse, range: Span): Span {
  const { low, high } = carries ?? range;
  return roundSpan({ low: Math.min(low, range.low), high: Math.max(high, range.high) }, quantity);
}

/** The span that a range needs and no more, its ends round; undefined where that is no narrower. */
export function narrowedSpan({ carries, quantity }: AnalogueUse, range: Span): Span | undefined {
  const needed = roundSpan(range, quantity);
  return carries !== undefined && needed.high - needed.low < carries.high - carries.low ? needed : undefined;
}

/** The largest error by resolution that an analogue signal would have with another span. */
export function resolutionErrorWith(use: AnalogueUse, span: Span): number | undefined {
  const count = countOf({ ...use, carries: span }, 0);
  return count === undefined ? undefined : count / 2;
}

function roundSpan({ low, high }: Span, quantity: AnalogueUse['quantity']): Span {
  const { dimension } = quantityInfo(quantity);
  const rounded = sensibleSpan(inUsualUnit(low, dimension), inUsualUnit(high, dimension));
  return { low: fromUsualUnit(rounded.low, dimension), high: fromUsualUnit(rounded.high, dimension) };
}

/** Powers of ten that a scale is moved by at the most. */
const MOST_DECADES = 6;

/** The next scale by powers of ten that holds a range, as the file would write it. */
export function coarserScale(use: RegisterUse, range: Span): string | undefined {
  return scaleAlong(use, range, 1, Number.POSITIVE_INFINITY);
}

/** The next scale by powers of ten that holds a range and is off by no more than `largestError`, as the file would write it. */
export function finerScale(use: RegisterUse, range: Span, largestError: number): string | undefined {
  return scaleAlong(use, range, -1, largestError);
}

function scaleAlong({ signal, format, scale }: RegisterUse, range: Span, step: 1 | -1, largestError: number) {
  const written = signal.scale?.value;
  if (written === undefined || format === undefined || scale === undefined) return undefined;
  const { offset, factor, symbol } = written.unit;
  for (let decades = 1; decades <= MOST_DECADES; decades++) {
    const other = scale * 10 ** (step * decades);
    const { low, high } = registerRange(format, other);
    const fits = holds({ low: low + offset, high: high + offset }, range) && other / 2 <= largestError;
    if (fits) return `${formatNumber(other / factor, MOST_DECADES)} ${symbol}`;
  }
  return undefined;
}

/** The other formats of as many registers that hold a range with the scale as it is. */
export function formatsFor({ format, scale, signal }: RegisterUse, range: Span): readonly RegisterFormat[] {
  const zero = signal.scale?.value.unit.offset ?? 0;
  if (format === undefined || scale === undefined) return [];
  return SAME_SIZE[format].filter((other) => {
    const { low, high } = registerRange(other, scale);
    return other !== format && holds({ low: low + zero, high: high + zero }, range);
  });
}

const ONE_REGISTER: readonly RegisterFormat[] = ['int16', 'uint16'];
const TWO_REGISTERS: readonly RegisterFormat[] = ['int32', 'uint32', 'float32'];

const SAME_SIZE: Readonly<Record<RegisterFormat, readonly RegisterFormat[]>> = {
  int16: ONE_REGISTER,
  uint16: ONE_REGISTER,
  int32: TWO_REGISTERS,
  uint32: TWO_REGISTERS,
  float32: TWO_REGISTERS,
};

/** How many registers a format takes. */
export function registersOf(format: RegisterFormat): number {
  return SAME_SIZE[format] === ONE_REGISTER ? 1 : 2;
}
