/**
 * The plane of the moist-air chart: air temperature to the right, humidity content upwards, as mixing ratio or as dew
 * point, for one pressure. Where air is drawn and what air a spot stands for, by the physics that everything uses.
 */
import { valueIfOk } from '../../base/outcome.ts';
import type { PhaseEnvelope } from '../../evaluate/air/envelope.ts';
import { COLDEST_POINT_CELSIUS, dewPointOfVapour } from '../../physics/air/dew-point.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { mixingRatio } from '../../physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../physics/air/saturated-vapour.ts';
import { placeOn, type Scale } from '../scale.ts';
import type { XY } from '../svg.ts';
import { outlineOf } from './outline.ts';

export type HumidityAxis = 'mixing-ratio' | 'dew-point';

export interface ChartPlane {
  readonly axis: HumidityAxis;
  /** Pa */
  readonly pressure: number;
  readonly temperature: Scale;
  readonly humidity: Scale;
}

/** Pixels of the picture around the plane and in it. */
export const FRAME = { left: 80, top: 60, right: 562, bottom: 420 } as const;

/** Beyond this content air is more steam than air, and everything drier would lie on the lower edge. kg/kg */
const MOST_MIXING_RATIO = 2;
/** The driest air is drawn no further than this below the coldest temperature. K */
const MOST_DEPRESSION = 40;
const ROOM = 0.06;

/** Takes in every envelope at a pressure in Pa, and the air named besides. */
export function planeOf(
  axis: HumidityAxis,
  pressure: number,
  envelopes: readonly PhaseEnvelope[],
  besides: readonly AirState[],
): ChartPlane {
  const states = [...envelopes.flatMap((envelope) => outlineOf(envelope, pressure)), ...besides];
  const temperatures = states.map(({ airCelsius }) => airCelsius);
  const coldest = Math.min(...temperatures);
  const contents = states.map(({ vapourPressure }) => contentOf(axis, vapourPressure, pressure));
  const driest = axis === 'mixing-ratio' ? 0 : Math.max(Math.min(...contents), coldest - MOST_DEPRESSION);
  const wettest = Math.max(driest, ...contents);
  const [low, high] = widened(coldest, Math.max(...temperatures), 4);
  const [, most] = widened(driest, wettest, axis === 'mixing-ratio' ? 0.002 : 4);
  const least = axis === 'mixing-ratio' ? 0 : driest - (most - wettest);
  return {
    axis,
    pressure,
    temperature: { low, high, from: FRAME.left, to: FRAME.right },
    humidity: { low: least, high: most, from: FRAME.bottom, to: FRAME.top },
  };
}

function widened(low: number, high: number, least: number): readonly [number, number] {
  const room = Math.max((high - low) * ROOM, least / 2);
  return [low - room, high + room];
}

/** Where air is drawn; what is too dry for the axis lies far below the frame. */
export function spotOfAir({ axis, pressure, temperature, humidity }: ChartPlane, air: AirState): XY {
  return [placeOn(temperature, air.airCelsius), placeOn(humidity, contentOf(axis, air.vapourPressure, pressure))];
}

/** Air of a temperature in °C and a relative humidity (fraction) at a pressure in Pa. */
export function airOfHumidity(airCelsius: number, relativeHumidity: number, pressure: number): AirState {
  return {
    airCelsius,
    pressure,
    vapourPressure: relativeHumidity * saturatedVapourPressure(airCelsius, pressure, 'water'),
  };
}

/** Air of a temperature and a dew point in °C at a pressure in Pa. */
export function airOfDewPoint(airCelsius: number, dewPointCelsius: number, pressure: number): AirState {
  return { airCelsius, pressure, vapourPressure: saturatedVapourPressure(dewPointCelsius, pressure, 'water') };
}

/** The value on the axis of humidity content, canonical; of dry air and of steam alone the least and the most it can be. */
function contentOf(axis: HumidityAxis, vapourPressure: number, pressure: number): number {
  if (axis === 'dew-point') return valueIfOk(dewPointOfVapour(vapourPressure, pressure)) ?? COLDEST_POINT_CELSIUS;
  if (vapourPressure >= pressure) return MOST_MIXING_RATIO;
  return Math.min(MOST_MIXING_RATIO, mixingRatio({ airCelsius: 0, pressure, vapourPressure }));
}
