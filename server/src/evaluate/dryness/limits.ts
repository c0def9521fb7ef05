/** What the sensor and its head are held to: the humidity limits, the margin to the dew point, the heat they bear. */
import { SATURATED } from '../../physics/air/state.ts';
import { boundIf, endBound, factBound, figureBound, limit, settingBound, writtenBound } from '../facts/limit.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { coldStartMargin } from './cold-start.ts';
import {
  highestHeadTemperature,
  humidityAtSensor,
  humidityAtUnheatedSensor,
  marginToDewPoint,
  riseToSet,
} from './dryness.ts';
import { largestRiseToAsk, riseReachable } from './reachable-rise.ts';

/** Wettest unheated sensor that plainly needs no heat, as a fraction. Common practice, no source. */
const NEEDS_NO_HEAT = 0.6;

/** Of the heated sensor and of the unheated one, as the site sets them. */
export const sensorHumidityLimit = limit(humidityAtSensor, 'at most', ({ heater, settings }: ResolvedPoint) =>
  settingBound(heater.on ? settings.sensorHumidityLimit : settings.unheatedHumidityLimit, 'relative-humidity'),
);

/** Of the sensor if it were not heated. */
export const unheatedHumidityLimit = limit(humidityAtUnheatedSensor, 'at most', ({ settings }: ResolvedPoint) =>
  settingBound(settings.unheatedHumidityLimit, 'relative-humidity'),
);

/** An unheated sensor in saturated air condenses, whatever the site permits. */
export const sensorSaturation = limit(humidityAtSensor, 'below', () => figureBound(SATURATED, 'relative-humidity'));

export const sensorMargin = limit(marginToDewPoint, 'at least', ({ settings }: ResolvedPoint) =>
  settingBound(settings.margin, 'temperature-difference'),
);

/** Air in which no heater is needed at all. */
export const needsNoHeat = limit(humidityAtUnheatedSensor, 'at most', () =>
  figureBound(NEEDS_NO_HEAT, 'relative-humidity'),
);

/** Broken where the sensor needs heat to stay under its limit. */
export const noRiseNeeded = limit(riseToSet, 'at most', () => figureBound(0, 'temperature-difference'));

/** No colder than the dew point when it enters a phase. */
export const headDryAtStart = limit(coldStartMargin, 'at least', () => figureBound(0, 'temperature-difference'));

/** What the model of the probe bears. */
export const headTemperatureLimit = limit(highestHeadTemperature, 'at most', ({ humidityProbeModel }: ResolvedPoint) =>
  boundIf(humidityProbeModel?.model?.value.ranges?.value.temperature, (range) => endBound(range, 'high')),
);

/** The heater has to reach what it is asked for. */
export const riseAsked = limit(riseReachable, 'at least', ({ heater }: ResolvedPoint) =>
  boundIf(heater.rise, writtenBound),
);

/** The heater has to reach what keeps the sensor dry. */
export const riseReachesNeed = limit(riseReachable, 'at least', ({ facts }: ResolvedPoint) =>
  factBound(facts.get(riseToSet)),
);

/** The largest rise worth asking for suffices where it keeps the sensor dry. */
export const largestRiseSuffices = limit(largestRiseToAsk, 'at least', ({ facts }: ResolvedPoint) =>
  factBound(facts.get(riseToSet)),
);

export const someRiseIsReached = limit(largestRiseToAsk, 'above', () => figureBound(0, 'temperature-difference'));
