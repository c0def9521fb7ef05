/** The facts of the signals: what one count is worth, what they carry, how much of that the envelope uses. */
import { rememberedOf } from '../../base/remembered.ts';
import { ANALOGUE_COUNT, COUNT_UNCERTAINTY } from '../../physics/electrical/resolution.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { rangeEnd } from '../air/quantity-range.ts';
import { reportPressures } from '../air/report-pressures.ts';
import type { Computed, Derivation } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { rangeInput, withoutRepeats } from '../facts/inputs.ts';
import { completeSpace, inSpace, signalFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { countOf, type SignalUse, signalUses } from '../resolved/signal-use.ts';

export const oneCount = signalFact('one-count', {
  title: (name) => `value of one count of ${name}`,
  dimension: differenceOf,
  compute: inSpace((point, _, name) => {
    const counted = countedSignal(point, name);
    return counted === undefined ? undefined : { value: counted.count, derivation: () => explainedCount(counted) };
  }),
});

export const resolutionError = signalFact('resolution-error', {
  title: (name) => `largest error by the resolution of ${name}`,
  dimension: differenceOf,
  compute: inSpace((point, _, name) => {
    const counted = countedSignal(point, name);
    if (counted === undefined) return undefined;
    const derivation = (): Derivation => {
      const { inputs, formulas } = explainedCount(counted);
      return { inputs, relation: 'half a count', formulas: [...formulas, COUNT_UNCERTAINTY] };
    };
    return { value: counted.count / 2, derivation };
  }),
});

export const lowestCarried = signalFact('lowest-value', {
  title: (name) => `lowest value that ${name} carries`,
  dimension: dimensionOf,
  compute: inSpace((point, _, name) => carriedEnd(point, name, 'low')),
});

export const highestCarried = signalFact('highest-value', {
  title: (name) => `highest value that ${name} carries`,
  dimension: dimensionOf,
  compute: inSpace((point, _, name) => carriedEnd(point, name, 'high')),
});

export const spanUsed = signalFact('span-used', {
  title: (name) => `part of the span of ${name} that the envelope uses`,
  dimension: 'percentage',
  compute: inSpace((point, _, name) => {
    const use = signalOf(point, name);
    const range = rangeOf(point, name);
    if (range === undefined || use?.kind !== 'analogue' || use.carries === undefined) return undefined;
    return {
      value: (range.high - range.low) / (use.carries.high - use.carries.low),
      derivation: () => ({
        inputs: [...inputsOf(use), ...range.inputs()],
        relation: '(highest − lowest value of the quantity) / width of the span',
        formulas: [],
      }),
    };
  }),
});

/** A signal whose quantity can be read. */
export function signalOf(point: ResolvedPoint, name: string): SignalUse | undefined {
  return signalUses(point).find((use) => use.name === name);
}

function quantityOf(point: ResolvedPoint, name: string): QuantityName {
  return signalOf(point, name)?.quantity ?? 'relative-humidity';
}

function dimensionOf(name: string, point: ResolvedPoint) {
  return quantityInfo(quantityOf(point, name)).dimension;
}

function differenceOf(name: string, point: ResolvedPoint) {
  return quantityInfo(quantityOf(point, name)).difference;
}

interface CarriedRange {
  readonly low: number;
  readonly high: number;
  readonly inputs: () => readonly FactInput[];
}

/** What the quantity of a signal takes in the space, as the point reports it. */
const rangeOf = rememberedOf((point: ResolvedPoint, name: string): CarriedRange | undefined => {
  const quantity = signalOf(point, name)?.quantity;
  const space = completeSpace(point);
  if (quantity === undefined || space === undefined) return undefined;
  const report = point.reports.find((candidate) => candidate.quantity === quantity)?.report;
  const pressures = report === undefined ? {} : reportPressures(report.value, point.settings);
  const lowest = rangeEnd(space, quantity, 'lowest', pressures);
  const highest = rangeEnd(space, quantity, 'highest', pressures);
  if (lowest.value === undefined || highest.value === undefined) return undefined;
  return {
    low: lowest.value,
    high: highest.value,
    // Both ends may stand in one phase, and are then told once.
    inputs: () => withoutRepeats([...lowest.derivation().inputs, ...highest.derivation().inputs]),
  };
});

interface CountedSignal {
  readonly use: SignalUse;
  readonly count: number;
  /** Where the count depends on the size of what is carried. */
  readonly range: CarriedRange | undefined;
}

const countedSignal = rememberedOf((point: ResolvedPoint, name: string): CountedSignal | undefined => {
  const use = signalOf(point, name);
  if (use === undefined) return undefined;
  const range = rangeOf(point, name);
  const count = countOf(use, Math.max(Math.abs(range?.low ?? 0), Math.abs(range?.high ?? 0)));
  return count === undefined ? undefined : { use, count, range: isFloat(use) ? range : undefined };
});

function explainedCount({ use, range }: CountedSignal): Derivation {
  const formulas = use.kind === 'analogue' ? [ANALOGUE_COUNT] : [];
  return { inputs: [...inputsOf(use), ...(range?.inputs() ?? [])], formulas };
}

/** A float holds anything that a quantity can be. */
function carriedEnd(point: ResolvedPoint, name: string, end: 'low' | 'high'): Computed | undefined {
  const use = signalOf(point, name);
  if (use?.carries === undefined || isFloat(use)) return undefined;
  return { value: use.carries[end], derivation: () => ({ inputs: inputsOf(use), formulas: [] }) };
}

function isFloat(use: SignalUse): boolean {
  return use.kind === 'register' && use.format === 'float32';
}

function inputsOf(use: SignalUse): readonly FactInput[] {
  if (use.kind === 'register') {
    const { format, scale } = use.signal;
    const origin = scale?.origin ?? use.located.origin;
    return [{ label: 'register', text: format?.value ?? use.format ?? 'format not known', origin }];
  }
  const { span, receiver } = use;
  const bits = receiver?.model?.value.bits;
  return [
    ...(span === undefined ? [] : [rangeInput('span', span)]),
    ...(receiver === undefined || bits === undefined
      ? []
      : [{ label: `input of ${receiver.id}`, text: `${bits.value} bits`, file: receiver.file, origin: bits.origin }]),
  ];
}
