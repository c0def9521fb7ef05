/** Turns the rows of a log, chunk after chunk, into what the recording says. The memory does not grow with the log. */
import type { RecordingBasis, RecordingSummary, UsedColumn } from '../evaluate/recording-summary.ts';
import { countDensity } from './density.ts';
import type { LogHumidity } from './log-quantities.ts';
import { countOutside } from './outside.ts';
import { countRange } from './ranges.ts';
import { recordedState } from './recorded-state.ts';
import { type Cell, rowCells } from './row-cells.ts';
import { countAtSensor } from './sensor-humidity.ts';
import { steepest } from './steepest.ts';
import { showTime, type TimeFormat } from './time-format.ts';
import { type TimeSteps, timeSteps, usualStep } from './time-steps.ts';

/** Rows of a log, canonical; what cannot be read is NaN. */
export interface RowChunk {
  readonly time: Float64Array;
  readonly airCelsius: Float64Array;
  readonly humidity: Float64Array;
  readonly pressure: Float64Array | undefined;
  readonly speed: Float64Array | undefined;
}

export interface Summarising {
  add(chunk: RowChunk): void;
  /** @returns undefined where no time has a value */
  finish(columns: readonly UsedColumn[], brokenRows: number): RecordingSummary | undefined;
}

const STATE_QUANTITIES = [
  'air-temperature',
  'relative-humidity',
  'dew-point',
  'dew-point-depression',
  'mixing-ratio',
] as const;

export function summarise(basis: RecordingBasis, humidity: LogHumidity, clock: TimeFormat['clock']): Summarising {
  const faults = { timeless: 0, valueless: 0, speedless: 0, impossible: 0, takenAsSaturated: 0 };
  const outside = countOutside(basis.envelopes);
  const sensors = basis.rises.map((rise) => countAtSensor(rise, basis));
  const ranges = STATE_QUANTITIES.map((quantity) => ({ quantity, range: countRange(quantity) }));
  const speeds = countRange('speed');
  const density = countDensity();
  const ramps = steepest();
  const cells = rowCells((airCelsius, value, pressure) => recordedState(airCelsius, pressure, humidity, value), settle);
  const before: { cell: Cell | undefined; time: number; speed: number | undefined } = {
    cell: undefined,
    time: 0,
    speed: undefined,
  };
  let steps: TimeSteps | undefined;
  let rows = 0;
  let usedSeconds = 0;
  let step = 0;
  let first = 0;

  /** What a state of air says, whenever it was. */
  function settle({ state, time, rows: count, seconds }: Cell): void {
    if (state === undefined) {
      faults.impossible += count;
      return;
    }
    if (state.takenAsSaturated) faults.takenAsSaturated += count;
    for (const sensor of sensors) sensor.add(state, time, seconds);
    for (const { quantity, range } of ranges) range.add(state.values[quantity], seconds);
    if (state.dewPointCelsius !== undefined) density.add(state.air.airCelsius, state.dewPointCelsius, seconds);
  }

  /** The row before stands for these seconds. */
  function stand({ cell, time, speed }: typeof before, seconds: number): void {
    if (cell === undefined) return;
    cell.seconds += seconds;
    if (cell.state === undefined) return;
    usedSeconds += seconds;
    outside.add(cell.state, speed, time, seconds);
    if (speed !== undefined) speeds.add(speed, seconds);
  }

  function addRow(time: number, airCelsius: number, value: number, pressure: number, speed: number | undefined): void {
    if (!Number.isFinite(time)) {
      faults.timeless += 1;
      return;
    }
    if (steps === undefined) {
      steps = timeSteps(time, step, clock === 'local');
      first = time;
    } else {
      stand(before, steps.to(time));
      if (steps.broken) ramps.interrupt();
    }
    before.time = time;
    before.speed = speed;
    if (!Number.isFinite(airCelsius) || !Number.isFinite(value) || !Number.isFinite(pressure)) {
      faults.valueless += 1;
      before.cell = undefined;
      return;
    }
    before.cell = cells.of(time, airCelsius, value, pressure);
    ramps.add(steps.elapsed, time, airCelsius);
  }

  return {
    add(chunk) {
      const { time, airCelsius, humidity: values, pressure, speed } = chunk;
      if (step === 0) step = usualStep([...time.filter(Number.isFinite)]);
      for (let row = 0; row < time.length; row++) {
        const rowSpeed = speed?.[row];
        const hasSpeed = rowSpeed !== undefined && Number.isFinite(rowSpeed);
        if (rowSpeed !== undefined && !hasSpeed) faults.speedless += 1;
        addRow(
          time[row] ?? Number.NaN,
          airCelsius[row] ?? Number.NaN,
          values[row] ?? Number.NaN,
          pressure === undefined ? basis.pressure : (pressure[row] ?? Number.NaN),
          hasSpeed ? rowSpeed : undefined,
        );
      }
      rows += time.length;
    },
    finish(columns, brokenRows) {
      cells.finish();
      if (steps === undefined || usedSeconds === 0) return undefined;
      const shown = (time: number): string => showTime(time, clock);
      const { longestGap, ...times } = steps.faults;
      const { rising, falling } = ramps.finish();
      const stretch = (found: NonNullable<typeof rising>) => ({
        ...found,
        from: shown(found.from),
        to: shown(found.to),
      });
      return {
        basis,
        extent: {
          rows,
          from: shown(first),
          to: shown(before.time),
          seconds: steps.elapsed,
          usedSeconds,
          step,
          columns,
        },
        faults: {
          brokenRows,
          ...faults,
          ...times,
          ...(longestGap === undefined ? {} : { longestGap: { ...longestGap, from: shown(longestGap.from) } }),
        },
        outside: outside.finish(usedSeconds, shown),
        sensors: sensors.flatMap((sensor) => sensor.finish(shown) ?? []),
        ramps: {
          ...(rising === undefined ? {} : { rising: stretch(rising) }),
          ...(falling === undefined ? {} : { falling: stretch(falling) }),
        },
        ranges: Object.fromEntries(
          [...ranges, { quantity: 'speed', range: speeds }].flatMap(({ quantity, range }) => {
            const found = range.finish();
            return found === undefined ? [] : [[quantity, found]];
          }),
        ),
        density: density.finish(),
      };
    },
  };
}
