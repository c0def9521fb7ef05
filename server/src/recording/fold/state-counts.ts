/** Gathers what the states of the air of a recording say, whenever they were. */
import type { RecordingBasis, RecordingFaults, RecordingSummary } from '../../evaluate/recorded/summary.ts';
import { countDensity } from './density.ts';
import { countRange } from './ranges.ts';
import type { Cell } from './row-cells.ts';
import { countAtSensor } from './sensor-humidity.ts';

export interface StateCounts {
  add(cell: Cell): void;
  finish(shownTime: (time: number) => string): CountedStates;
}

export interface CountedStates extends Pick<RecordingSummary, 'sensors' | 'ranges' | 'density'> {
  readonly faults: Pick<RecordingFaults, 'impossible' | 'takenAsSaturated'>;
}

const STATE_QUANTITIES = [
  'air-temperature',
  'relative-humidity',
  'dew-point',
  'dew-point-depression',
  'mixing-ratio',
] as const;

export function countStates(basis: RecordingBasis): StateCounts {
  const faults = { impossible: 0, takenAsSaturated: 0 };
  const sensors = basis.rises.map((rise) => countAtSensor(rise, basis));
  const ranges = STATE_QUANTITIES.map((quantity) => ({ quantity, range: countRange(quantity) }));
  const density = countDensity();
  return {
    add({ state, time, rows, seconds }) {
      if (state === undefined) {
        faults.impossible += rows;
        return;
      }
      if (state.takenAsSaturated) faults.takenAsSaturated += rows;
      for (const sensor of sensors) sensor.add(state, time, seconds);
      for (const { quantity, range } of ranges) range.add(state.values[quantity], seconds);
      if (state.dewPointCelsius !== undefined) density.add(state.air.airCelsius, state.dewPointCelsius, seconds);
    },
    finish: (shownTime) => ({
      faults,
      sensors: sensors.flatMap((sensor) => sensor.finish(shownTime) ?? []),
      ranges: Object.fromEntries(
        ranges.flatMap(({ quantity, range }) => {
          const found = range.finish();
          return found === undefined ? [] : [[quantity, found]];
        }),
      ),
      density: density.finish(),
    }),
  };
}
