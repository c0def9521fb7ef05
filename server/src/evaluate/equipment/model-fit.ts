/** How a model of the kits would suit a space, for whoever chooses one: its distance from the limits, and objections. */
import { exceeds } from '../../base/rounding.ts';
import type { Located } from '../../model/located.ts';
import type { HumidityProbeModel, TemperatureProbeModel } from '../../model/model-types.generated.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import {
  airTemperatureEnds,
  humidityEnds,
  pressureEnds,
  type RangeEnds,
  uncertifiedZones,
  unlistedExposures,
} from './model-limits.ts';

export interface ModelFit {
  /** Least distance of the temperatures at the probe from the ends of the model's range, K; negative outside. */
  readonly temperatureMargin: number | undefined;
  /** Why it does not suit, in a few words each; none where nothing speaks against it. */
  readonly objections: readonly string[];
}

/** What is asked of a humidity probe besides bearing the space. */
export interface HeatingWanted {
  readonly heater: boolean;
  /** K, 0 where none is asked. */
  readonly rise: number;
  /** The highest humidity that the sensor then sees. */
  readonly highestHumidity: number | undefined;
}

export function humidityProbeFit(model: HumidityProbeModel, space: SpaceEvaluation, wanted: HeatingWanted): ModelFit {
  const { heater } = model;
  const reach = heater?.value.maximumRise?.value.value;
  const humidity = model.ranges?.value.relativeHumidity;
  const objections = [
    wanted.heater && heater === undefined ? 'has no heater' : undefined,
    heater !== undefined && reach !== undefined && reach < wanted.rise
      ? `reaches ${showQuantity(reach, 'temperature-difference')} of rise`
      : undefined,
    madeForLess(humidity, [lowestHumidity(space), wanted.highestHumidity]),
  ];
  return fitOf(model, space, wanted.rise, objections);
}

export function temperatureProbeFit(model: TemperatureProbeModel, space: SpaceEvaluation): ModelFit {
  return fitOf(model, space, 0, []);
}

function fitOf(
  model: HumidityProbeModel | TemperatureProbeModel,
  space: SpaceEvaluation,
  rise: number,
  others: readonly (string | undefined)[],
): ModelFit {
  const { temperature, pressure } = model.ranges?.value ?? {};
  const margin = temperatureMargin(temperature, space, rise);
  const exposures = unlistedExposures(model, space.located.value);
  const zones = uncertifiedZones(model, space.located.value);
  const objections = [
    margin !== undefined && margin < 0
      ? `${showQuantity(-margin, 'temperature-difference')} outside its temperature range`
      : undefined,
    ...others,
    madeForLess(pressure, valuesOf(pressureEnds(space))),
    exposures.length === 0 ? undefined : `does not list ${exposures.map(({ value }) => value).join(', ')}`,
    zones.length === 0 ? undefined : `not certified for ${zones.map(({ value }) => value).join(', ')}`,
  ];
  return { temperatureMargin: margin, objections: objections.filter((objection) => objection !== undefined) };
}

function valuesOf([lowest, highest]: RangeEnds): Ends {
  return [lowest?.value, highest?.value];
}

type Ends = readonly [lowest: number | undefined, highest: number | undefined];

function lowestHumidity(space: SpaceEvaluation): number | undefined {
  return humidityEnds(space, undefined)[0]?.value;
}

function madeForLess(range: Located<QuantityRange> | undefined, [lowest, highest]: Ends): string | undefined {
  if (range === undefined) return undefined;
  const { low, high, dimension } = range.value;
  const isLeft = (lowest !== undefined && exceeds(low, lowest)) || (highest !== undefined && exceeds(highest, high));
  return isLeft ? `made for ${showRange(low, high, dimension)}` : undefined;
}

/** Undefined where the kit gives no range or the air temperature is not known. */
function temperatureMargin(
  range: Located<QuantityRange> | undefined,
  space: SpaceEvaluation,
  rise: number,
): number | undefined {
  const [coldest, hottest] = airTemperatureEnds(space);
  if (range === undefined || hottest === undefined || coldest === undefined) return undefined;
  return Math.min(range.value.high - (hottest.value + rise), coldest.value - range.value.low);
}
