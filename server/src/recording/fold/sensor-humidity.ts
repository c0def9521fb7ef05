/** Gathers the humidity that one sensor of the space saw: its distribution, and how near it came to condensation. */
import type { RecordingBasis, SensorHumidity } from '../../evaluate/recorded/summary.ts';
import { relativeHumidityAt } from '../../physics/air/quantities.ts';
import { BIN_WIDTHS } from './bin-widths.ts';
import { histogram } from './histogram.ts';
import { extremeFinder, momentOf } from './moments.ts';
import type { RecordedState } from './recorded-state.ts';

export interface SensorCount {
  add(state: RecordedState, time: number, seconds: number): void;
  finish(shownTime: (time: number) => string): SensorHumidity | undefined;
}

const SHARES = [0.005, 0.05, 0.25, 0.5, 0.75, 0.95, 0.995];

/** @param rise of the sensor above the air, K */
export function countAtSensor(rise: number, basis: RecordingBasis): SensorCount {
  const limit = rise > 0 ? basis.sensorHumidityLimit : basis.unheatedHumidityLimit;
  const distribution = histogram(BIN_WIDTHS['relative-humidity']);
  const highest = extremeFinder('highest');
  const leastMargin = extremeFinder('lowest');
  let secondsAboveLimit = 0;
  return {
    add(state, time, seconds) {
      const humidity =
        rise === 0 ? state.values['relative-humidity'] : relativeHumidityAt(state.air, state.air.airCelsius + rise);
      distribution.add(humidity, seconds);
      if (humidity > limit) secondsAboveLimit += seconds;
      highest.offer(humidity, time, state);
      if (state.dewPointCelsius !== undefined) {
        leastMargin.offer(state.air.airCelsius + rise - state.dewPointCelsius, time, state);
      }
    },
    finish(shownTime) {
      const wettest = highest.found();
      const nearest = leastMargin.found();
      if (wettest === undefined) return undefined;
      return {
        rise,
        limit,
        secondsAboveLimit,
        highest: wettest.value,
        highestAt: momentOf(wettest, shownTime),
        ...(nearest === undefined ? {} : { leastMargin: { kelvin: nearest.value, at: momentOf(nearest, shownTime) } }),
        quantiles: SHARES.flatMap((share) => {
          const value = distribution.quantile(share);
          return value === undefined ? [] : [{ share, value }];
        }),
      };
    },
  };
}
