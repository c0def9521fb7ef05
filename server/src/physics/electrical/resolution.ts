/** What one count of an analogue channel or of a register is worth, and which values fit. */
import type { Formula } from '../formula.ts';

export type RegisterFormat = 'int16' | 'uint16' | 'int32' | 'uint32' | 'float32';

export interface ValueRange {
  readonly low: number;
  readonly high: number;
}

/** u = q / 12^1/2 */
export const COUNT_UNCERTAINTY: Formula = {
  id: 'count-uncertainty',
  title: 'Standard uncertainty of a value that is resolved in counts',
  source: 'JCGM 100:2008, F.2.2.1',
  validity: [],
};

/** q = span · (input range / signal range) / 2^N */
export const ANALOGUE_COUNT: Formula = {
  id: 'analogue-count',
  title: 'Value of one count of an analogue channel',
  source: 'IEEE 1241, ideal code width: full-scale range over 2^N',
  validity: [],
};

const INTEGER_COUNTS: Readonly<Record<Exclude<RegisterFormat, 'float32'>, ValueRange>> = {
  int16: { low: -(2 ** 15), high: 2 ** 15 - 1 },
  uint16: { low: 0, high: 2 ** 16 - 1 },
  int32: { low: -(2 ** 31), high: 2 ** 31 - 1 },
  uint32: { low: 0, high: 2 ** 32 - 1 },
};

/** IEEE 754 binary32: 24 significant bits, largest finite value (2 − 2^−23)·2^127, smallest normal 2^−126. */
const FLOAT32_SIGNIFICANT_BITS = 24;
const FLOAT32_SMALLEST_EXPONENT = -126;
const FLOAT32_LARGEST = (2 - 2 ** -23) * 2 ** 127;

/**
 * Value of one count of an analogue channel, in the unit of the span.
 *
 * Worked value (by hand): 0 to 100 %RH as 4 to 20 mA into a 12-bit input of 0 to 20 mA gives 0.0305 %RH.
 *
 * @param span of the quantity, high minus low
 * @param signalRange that carries the span, such as 16 mA
 * @param inputRange of the receiver, in the same unit, such as 20 mA
 * @param bits of the receiver
 */
export function analogueCount(span: number, signalRange: number, inputRange: number, bits: number): number {
  return (span * inputRange) / signalRange / 2 ** bits;
}

/**
 * Value of one count of a register near `value`, in the unit of the scale.
 *
 * Integers: the scale. float32: the scale times the distance between neighbouring IEEE 754 binary32 numbers.
 *
 * Worked value (IEEE 754): float32 near 60 with scale 1 gives 2^−18 = 3.8e-6.
 *
 * @param scale value of register content 1, above 0
 * @param value that the register carries
 */
export function registerCount(format: RegisterFormat, scale: number, value: number): number {
  if (format !== 'float32') return scale;
  return scale * 2 ** (binaryExponent(value / scale) - FLOAT32_SIGNIFICANT_BITS + 1);
}

/** Values that a register can carry with this scale, in the unit of the scale. int16 in hundredths: −327.68 to 327.67. */
export function registerRange(format: RegisterFormat, scale: number): ValueRange {
  const content = format === 'float32' ? { low: -FLOAT32_LARGEST, high: FLOAT32_LARGEST } : INTEGER_COUNTS[format];
  return { low: content.low * scale, high: content.high * scale };
}

function binaryExponent(value: number): number {
  const exponent = Math.floor(Math.log2(Math.abs(value)));
  return Math.max(exponent, FLOAT32_SMALLEST_EXPONENT);
}
