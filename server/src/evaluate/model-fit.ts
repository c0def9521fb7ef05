/** How a model of the kits would suit a space, for whoever chooses one: its distance from the limits, and objections. */
import type { Located } from '../model/located.ts';
import type { HumidityProbeModel, TemperatureProbeModel } from '../model/model-types.generated.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import type { QuantityRange } from '../quantity/quantity.ts';
import { type Fact, isKnown, showFact } from './fact.ts';
import { quantityExtreme, type SpaceEvaluation } from './space.ts';

export interface ModelFit {
  /** Least distance of the temperatures at the probe from the ends of the model's range; negative outside. */
  readonly temperatureMargin: Fact;
  /** Why it does not suit, in a few words each; none where nothing speaks against it. */
  readonly objections: readonly string[];
}

/** What is asked of a humidity probe besides bearing the space. */
export interface HeatingWanted {
  readonly heater: boolean;
  /** K, 0 where none is asked. */
  readonly rise: number;
}

export function humidityProbeFit(model: HumidityProbeModel, space: SpaceEvaluation, wanted: HeatingWanted): ModelFit {
  const { ranges, heater } = model;
  const reach = heater?.value.maximumRise?.value.value;
  const heating = [
    wanted.heater && heater === undefined ? 'has no heater' : undefined,
    heater !== undefined && reach !== undefined && reach < wanted.rise
      ? `reaches ${showQuantity(reach, 'temperature-difference')} of rise`
      : undefined,
  ];
  return fitOf(model, ranges?.value.temperature, ranges?.value.pressure, space, wanted.rise, heating);
}

export function temperatureProbeFit(model: TemperatureProbeModel, space: SpaceEvaluation): ModelFit {
  return fitOf(model, model.ranges?.value.temperature, model.ranges?.value.pressure, space, 0, []);
}

function fitOf(
  { withstands, zones }: Pick<HumidityProbeModel, 'withstands' | 'zones'>,
  temperature: Located<QuantityRange> | undefined,
  pressure: Located<QuantityRange> | undefined,
  space: SpaceEvaluation,
  rise: number,
  others: readonly (string | undefined)[],
): ModelFit {
  const margin = temperatureMargin(temperature, space, rise);
  const lacking = <Word extends string>(
    asked: Located<readonly Located<Word>[]> | undefined,
    has: typeof withstands | typeof zones,
  ): readonly Word[] => {
    const known = new Set<string>((has?.value ?? []).map(({ value }) => value));
    return (asked?.value ?? []).map(({ value }) => value).filter((word) => !known.has(word));
  };
  const { exposure, hazards } = space.located.value;
  const exposures = lacking(exposure, withstands);
  const flammable = lacking(hazards, zones).filter((hazard) => hazard.startsWith('flammable-zone-'));
  const objections = [
    isKnown(margin) && margin.value < 0
      ? `${showQuantity(-margin.value, 'temperature-difference')} outside its temperature range`
      : undefined,
    ...others,
    pressure !== undefined && (space.pressure.low < pressure.value.low || space.pressure.high > pressure.value.high)
      ? `made for ${showRange(pressure.value.low, pressure.value.high, 'pressure')}`
      : undefined,
    exposures.length === 0 ? undefined : `does not list ${exposures.join(', ')}`,
    flammable.length === 0 ? undefined : `not certified for ${flammable.join(', ')}`,
  ];
  return { temperatureMargin: margin, objections: objections.filter((objection) => objection !== undefined) };
}

function temperatureMargin(range: Located<QuantityRange> | undefined, space: SpaceEvaluation, rise: number): Fact {
  const base = {
    id: 'model-temperature-margin',
    title: 'least distance from the ends of the temperature range of the model',
    dimension: 'temperature-difference',
    relation: 'the lesser of highest of the range − (hottest air + rise), and coldest air − lowest of the range',
    formulas: [],
    notes: [],
  } as const;
  const lacking = (missing: string): Fact => ({ ...base, value: undefined, missing, inputs: [] });
  if (range === undefined) return lacking('the kit gives no temperature range');
  const hottest = quantityExtreme(space, 'air-temperature', 'highest');
  const coldest = quantityExtreme(space, 'air-temperature', 'lowest');
  if (!isKnown(hottest) || !isKnown(coldest)) return lacking('the air temperature of the space is not known');
  const { low, high } = range.value;
  return {
    ...base,
    value: Math.min(high - (hottest.value + rise), coldest.value - low),
    inputs: [
      { label: 'temperature range of the model', text: showRange(low, high, 'temperature') },
      { label: 'hottest air', text: showFact(hottest) },
      { label: 'coldest air', text: showFact(coldest) },
      { label: 'rise', text: showQuantity(rise, 'temperature-difference') },
    ],
  };
}
