/** The facts of the signals: what one count is worth, what they carry, how much of that the envelope uses. */
import { ANALOGUE_COUNT, COUNT_UNCERTAINTY } from '../../physics/electrical/resolution.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantity-names.ts';
import { reportPressures } from '../air/report-pressures.ts';
import { type Fact, type FactInput, isKnown, type KnownFact } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import { countOf, type SignalUse } from '../resolved/signal-use.ts';
import { quantityExtreme, type SpaceEvaluation } from '../space.ts';
import { faultLevel } from './fault-level.ts';

export function signalFacts(
  uses: readonly SignalUse[],
  resolved: ResolvedPoint,
  space: SpaceEvaluation,
): readonly Fact[] {
  return uses.flatMap((use) => {
    const range = rangeOf(use, resolved, space);
    const fault = faultLevel(use, resolved.settings);
    return [
      ...countFacts(use, range),
      ...carryingFacts(use),
      ...(range === undefined ? [] : usedFacts(use, range)),
      ...(fault?.kind === 'given' ? [fault.fact] : []),
    ];
  });
}

interface RangeFacts {
  readonly lowest: KnownFact;
  readonly highest: KnownFact;
}

/** What the quantity of a signal takes in the space, as the point reports it. */
function rangeOf({ quantity }: SignalUse, resolved: ResolvedPoint, space: SpaceEvaluation): RangeFacts | undefined {
  const report = resolved.reports.find((candidate) => candidate.quantity === quantity)?.report;
  const pressures = report === undefined ? {} : reportPressures(report.value, resolved.settings);
  const lowest = quantityExtreme(space, quantity, 'lowest', pressures);
  const highest = quantityExtreme(space, quantity, 'highest', pressures);
  return isKnown(lowest) && isKnown(highest) ? { lowest, highest } : undefined;
}

function countFacts(use: SignalUse, range: RangeFacts | undefined): readonly Fact[] {
  const magnitude = Math.max(Math.abs(range?.lowest.value ?? 0), Math.abs(range?.highest.value ?? 0));
  const count = countOf(use, magnitude);
  if (count === undefined) return [];
  const base = {
    dimension: quantityInfo(use.quantity).difference,
    inputs: isFloat(use) && range !== undefined ? [...inputsOf(use), ...inputsOfRange(range)] : inputsOf(use),
    notes: [],
  };
  const formulas = use.kind === 'analogue' ? [ANALOGUE_COUNT] : [];
  return [
    { id: `signal/${use.name}/one-count`, title: `value of one count of ${use.name}`, value: count, formulas, ...base },
    {
      id: `signal/${use.name}/resolution-error`,
      title: `largest error by the resolution of ${use.name}`,
      value: count / 2,
      relation: 'half a count',
      formulas: [...formulas, COUNT_UNCERTAINTY],
      ...base,
    },
  ];
}

function carryingFacts(use: SignalUse): readonly Fact[] {
  const { name, quantity, carries } = use;
  // A float holds anything that a quantity can be.
  if (carries === undefined || isFloat(use)) return [];
  const base = { dimension: quantityInfo(quantity).dimension, inputs: inputsOf(use), formulas: [], notes: [] };
  return [
    { id: `signal/${name}/lowest-value`, title: `lowest value that ${name} carries`, value: carries.low, ...base },
    { id: `signal/${name}/highest-value`, title: `highest value that ${name} carries`, value: carries.high, ...base },
  ];
}

function isFloat(use: SignalUse): boolean {
  return use.kind === 'register' && use.format === 'float32';
}

/** Both ends may stand in one phase, and are then told once. */
function inputsOfRange({ lowest, highest }: RangeFacts): readonly FactInput[] {
  return [...new Set([...lowest.inputs, ...highest.inputs])];
}

function usedFacts(use: SignalUse, range: RangeFacts): readonly Fact[] {
  const { name, carries } = use;
  const { lowest, highest } = range;
  if (use.kind !== 'analogue' || carries === undefined) return [];
  return [
    {
      id: `signal/${name}/span-used`,
      title: `part of the span of ${name} that the envelope uses`,
      dimension: 'percentage',
      value: (highest.value - lowest.value) / (carries.high - carries.low),
      inputs: [...inputsOf(use), ...inputsOfRange(range)],
      relation: '(highest − lowest value of the quantity) / width of the span',
      formulas: [],
      notes: [],
    },
  ];
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
    ...(span === undefined
      ? []
      : [
          {
            label: 'span',
            text: showRange(span.value.low, span.value.high, span.value.dimension),
            origin: span.origin,
          },
        ]),
    ...(receiver === undefined || bits === undefined
      ? []
      : [{ label: `input of ${receiver.id}`, text: `${bits.value} bits`, file: receiver.file, origin: bits.origin }]),
  ];
}
