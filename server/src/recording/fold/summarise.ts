/** Turns the rows of a log, chunk after chunk, into what the recording says. The memory does not grow with the log. */
import type { Ramp, RecordingBasis, RecordingSummary, UsedColumn } from '../../evaluate/recorded/summary.ts';
import type { LogHumidity } from '../dialect/log-quantities.ts';
import { showTime, type TimeFormat } from '../dialect/time-format.ts';
import { countOutside } from './outside.ts';
import { countRange } from './ranges.ts';
import { recordedState } from './recorded-state.ts';
import { type Cell, rowCells } from './row-cells.ts';
import { countStates } from './state-counts.ts';
import { type Steepest, type SteepStretch, steepest } from './steepest.ts';
import { type TimeFaults, type TimeSteps, timeSteps, usualStep } from './time-steps.ts';

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

export function summarise(basis: RecordingBasis, humidity: LogHumidity, clock: TimeFormat['clock']): Summarising {
  const faults = { timeless: 0, valueless: 0, speedless: 0 };
  const outside = countOutside(basis.envelopes);
  const states = countStates(basis);
  const speeds = countRange('speed');
  const ramps = steepest();
  const cells = rowCells(
    (airCelsius, value, pressure) => recordedState(airCelsius, pressure, humidity, value),
    states.add,
  );
  const before: RowBefore = { cell: undefined, time: 0, speed: undefined };
  let steps: TimeSteps | undefined;
  let rows = 0;
  let usedSeconds = 0;
  let step = 0;
  let first = 0;

  /** The row before stands for these seconds. */
  function stand({ cell, time, speed }: RowBefore, seconds: number): void {
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
      const [from, to, seconds] = [shown(first), shown(before.time), steps.elapsed];
      const { faults: ofStates, sensors, ranges, density } = states.finish(shown);
      const ofTimes = faultsShown(steps.faults, shown);
      const speed = speeds.finish();
      return {
        basis,
        extent: { rows, from, to, seconds, usedSeconds, step, columns },
        faults: { brokenRows, ...faults, ...ofStates, ...ofTimes },
        outside: outside.finish(usedSeconds, shown),
        sensors,
        ramps: rampsShown(ramps.finish(), shown),
        ranges: { ...ranges, ...(speed === undefined ? {} : { speed }) },
        density,
      };
    },
  };
}

interface RowBefore {
  /** Undefined where the row has no value. */
  cell: Cell | undefined;
  time: number;
  speed: number | undefined;
}

type ShownTime = (time: number) => string;

function faultsShown({ longestGap, ...counts }: TimeFaults, shown: ShownTime) {
  return longestGap === undefined ? counts : { ...counts, longestGap: { ...longestGap, from: shown(longestGap.from) } };
}

function rampsShown({ rising, falling }: ReturnType<Steepest['finish']>, shown: ShownTime): RecordingSummary['ramps'] {
  const ramp = (found: SteepStretch): Ramp => ({ ...found, from: shown(found.from), to: shown(found.to) });
  return {
    ...(rising === undefined ? {} : { rising: ramp(rising) }),
    ...(falling === undefined ? {} : { falling: ramp(falling) }),
  };
}
