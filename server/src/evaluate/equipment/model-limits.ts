/** What a space asks of a probe: what its ranges must hold, exposures it does not list, zones it is not certified for. */
import type { Located } from '../../model/located.ts';
import type { Hazard, HumidityProbeModel, Space } from '../../model/model-types.generated.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import { highestPressure, lowestPressure } from '../air/pressure-facts.ts';
import { highest, lowest } from '../air/quantity-range.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { type Fact, isKnown, type KnownFact } from '../facts/fact.ts';
import { endBound, type Held, judged } from '../facts/limit.ts';

/** What the range of a model has to hold, as far as it is known. */
export type RangeEnds = readonly [lowest: KnownFact | undefined, highest: KnownFact | undefined];

export function airTemperatureEnds(space: SpaceEvaluation): RangeEnds {
  return [ifKnown(space.facts.get(lowest('air-temperature'))), ifKnown(space.facts.get(highest('air-temperature')))];
}

/** The lowest is that of the air: what a heated sensor sees is lower still. */
export function humidityEnds(space: SpaceEvaluation, highestAtSensor: Fact | undefined): RangeEnds {
  return [ifKnown(space.facts.get(lowest('relative-humidity'))), ifKnown(highestAtSensor)];
}

export function pressureEnds(space: SpaceEvaluation): RangeEnds {
  return [ifKnown(space.facts.get(lowestPressure)), ifKnown(space.facts.get(highestPressure))];
}

/** What goes over the high end of a range, then what goes under the low one. */
export function leavesRange([least, most]: RangeEnds, range: Located<QuantityRange>): readonly Held[] {
  const ends = [judged(most, 'at most', endBound(range, 'high')), judged(least, 'at least', endBound(range, 'low'))];
  return ends.filter((end) => end?.isKept === false).filter((end) => end !== undefined);
}

/** True where the air alone, without a heater, stays under the high end of a range of temperatures. */
export function bearsAirOf(space: SpaceEvaluation, range: Located<QuantityRange>): boolean {
  return judged(space.facts.get(highest('air-temperature')), 'at most', endBound(range, 'high'))?.isKept === true;
}

function ifKnown(fact: Fact | undefined): KnownFact | undefined {
  return isKnown(fact) ? fact : undefined;
}

/** The exposures of the space that the model does not list: all of them where it lists none. */
export function unlistedExposures(
  { withstands }: Pick<HumidityProbeModel, 'withstands'>,
  { exposure }: Space,
): readonly Located<string>[] {
  const listed = new Set(withstands?.value.map(({ value }) => value));
  return exposure?.value.filter(({ value }) => !listed.has(value)) ?? [];
}

/** The lower its number, the more often a zone is flammable and the stricter its certificate. */
const STRICTEST_FIRST: readonly Hazard[] = ['flammable-zone-0', 'flammable-zone-1', 'flammable-zone-2'];

/**
 * The flammable zones of the space that the model may not stand in. Equipment for zone 0 suits zones 1 and 2,
 * equipment for zone 1 suits zone 2: Directive 2014/34/EU, Annex I, at second hand.
 */
export function uncertifiedZones(
  { zones }: Pick<HumidityProbeModel, 'zones'>,
  { hazards }: Space,
): readonly Located<Hazard>[] {
  const certified = new Set<Hazard>(zones?.value.map(({ value }) => value));
  const isUncertified = ({ value }: Located<Hazard>): boolean => {
    const suitable = STRICTEST_FIRST.slice(0, STRICTEST_FIRST.indexOf(value) + 1);
    return suitable.length > 0 && !suitable.some((zone) => certified.has(zone));
  };
  return hazards?.value.filter(isUncertified) ?? [];
}
