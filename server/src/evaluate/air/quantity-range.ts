/** The range that each quantity of humid air takes in a space. */
import { valueIfOk } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { formulaLeftByQuantity } from '../facts/corner.ts';
import type { Computed } from '../facts/declared-fact.ts';
import type { Fact } from '../facts/fact.ts';
import { broken, factBound, type Limit, limit } from '../facts/limit.ts';
import { derivationOf, quantityValue } from '../facts/quantity-value.ts';
import type { ReportPressures } from './report-pressures.ts';
import type { SpaceEvaluation } from './space.ts';
import { quantityFact } from './space-fact.ts';
import { worstFact, worstOverPhases } from './worst-fact.ts';

export type RangeEnd = 'lowest' | 'highest';

export const lowest = rangeEndFact('lowest');
export const highest = rangeEndFact('highest');

function rangeEndFact(end: RangeEnd) {
  return quantityFact(end, {
    title: (quantity) => titleOfEnd(quantity, end),
    dimension: (quantity) => quantityInfo(quantity).dimension,
    compute: (space, quantity) => (space.complete ? rangeEnd(space, quantity, end) : undefined),
  });
}

export function titleOfEnd(quantity: QuantityName, end: RangeEnd): string {
  return `${end} ${quantityInfo(quantity).title}`;
}

const ends = remembered((_: SpaceEvaluation) => new Map<string, Computed>());

/** The highest or lowest value that a quantity takes in a space, as a report with pressures of its own has it. */
export function rangeEnd(
  space: SpaceEvaluation,
  name: QuantityName,
  end: RangeEnd,
  pressures: ReportPressures = {},
): Computed {
  const known = ends(space);
  const key = `${name}/${end}@${pressures.own?.value ?? ''}/${pressures.other?.value ?? ''}`;
  const computed = known.get(key) ?? computedEnd(space, name, end, pressures);
  known.set(key, computed);
  return computed;
}

function computedEnd(
  space: SpaceEvaluation,
  name: QuantityName,
  end: RangeEnd,
  { own, other }: ReportPressures,
): Computed {
  const worst = worstOverPhases(space.phases, end, (state) => {
    const taken = own === undefined ? state : { ...state, pressure: own.value };
    return taken.pressure > taken.vapourPressure ? valueIfOk(quantityValue(name, taken, other?.value)) : undefined;
  });
  const inputs = () => [own, other].flatMap((pressure) => (pressure === undefined ? [] : [pressure.input]));
  return worstFact(derivationOf(name), worst, inputs, (state) => formulaLeftByQuantity(name, state, other?.value));
}

/** True where no temperature of the air of one space is one of the other's. */
export function areNeverEquallyWarm(one: SpaceEvaluation, other: SpaceEvaluation): boolean {
  const isColder = (cold: SpaceEvaluation, warm: SpaceEvaluation): boolean =>
    broken(reachesTemperature(warm.facts.get(lowest('air-temperature'))), cold) !== undefined;
  return isColder(one, other) || isColder(other, one);
}

function reachesTemperature(celsius: Fact | undefined): Limit<SpaceEvaluation> {
  return limit(highest('air-temperature'), 'at least', () => factBound(celsius));
}
