/** The air of one row of a log, by the product's own formulas. */
import { valueIfOk } from '../../base/outcome.ts';
import type { BoundedQuantity } from '../../evaluate/recorded/summary.ts';
import { COLDEST_POINT_CELSIUS } from '../../physics/air/dew-point.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { dewPoint, mixingRatio, relativeHumidity } from '../../physics/air/quantities.ts';
import { airState } from '../../physics/air/state.ts';
import type { LogHumidity } from '../dialect/log-quantities.ts';

export interface RecordedState {
  readonly air: AirState;
  /** What is above saturation by no more than the errors of usual sensors is taken for saturated. */
  readonly takenAsSaturated: boolean;
  /** °C; absent where the air is too dry for one. */
  readonly dewPointCelsius: number | undefined;
  readonly values: Readonly<Record<Exclude<BoundedQuantity, 'speed'>, number>>;
}

/** Relative humidity up to which a reading above saturation counts as saturated air: common practice, no source. */
const MOST_OVERSATURATION = 1.05;

/** @returns undefined where such air cannot be */
export function recordedState(
  airCelsius: number,
  pressure: number,
  quantity: LogHumidity,
  value: number,
): RecordedState | undefined {
  const read = airState(airCelsius, pressure, { quantity, value });
  // The dew point of a log of dew points is what was logged; solving for it again would take most of the time.
  if (read.ok) return stateOf(read.value, false, quantity === 'dew-point' ? value : valueIfOk(dewPoint(read.value)));
  const { problem } = read;
  if (!('relativeHumidity' in problem) || problem.relativeHumidity > MOST_OVERSATURATION) return undefined;
  const saturated = airState(airCelsius, pressure, { quantity: 'relative-humidity', value: 1 });
  return saturated.ok ? stateOf(saturated.value, true, airCelsius) : undefined;
}

function stateOf(air: AirState, takenAsSaturated: boolean, dewPointCelsius: number | undefined): RecordedState {
  const dewPointOrColdest = dewPointCelsius ?? COLDEST_POINT_CELSIUS;
  return {
    air,
    takenAsSaturated,
    dewPointCelsius,
    values: {
      'air-temperature': air.airCelsius,
      'relative-humidity': relativeHumidity(air),
      'dew-point': dewPointOrColdest,
      'dew-point-depression': air.airCelsius - dewPointOrColdest,
      'mixing-ratio': mixingRatio(air),
    },
  };
}
