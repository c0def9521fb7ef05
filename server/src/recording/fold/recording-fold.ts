/** Turns the rows of a log, chunk after chunk, into what the recording says. The memory does not grow with the log. */
import type { Ramp, RecordingBasis, RecordingSummary, UsedColumn } from '../../evaluate/recorded/summary.ts';
import type { LogHumidity } from '../dialect/log-quantities.ts';
import { showTime, type TimeFormat } from '../dialect/time-format.ts';
import { countOutside } from './outside.ts';
import { countRange } from './ranges.ts';
import { recordedState } from './recorded-state.ts';
import { type Cell, type RowCells, rowCells } from './row-cells.ts';
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

/** One recording as it is gathered. */
export class RecordingFold {
  readonly #basis: RecordingBasis;
  readonly #clock: TimeFormat['clock'];
  readonly #faults = { timeless: 0, valueless: 0, speedless: 0 };
  readonly #outside: ReturnType<typeof countOutside>;
  readonly #states: ReturnType<typeof countStates>;
  readonly #speeds = countRange('speed');
  readonly #ramps = steepest();
  readonly #cells: RowCells;
  readonly #before: RowBefore = { cell: undefined, time: 0, speed: undefined };
  #steps: TimeSteps | undefined;
  #rows = 0;
  #usedSeconds = 0;
  #step = 0;
  #first = 0;

  constructor(basis: RecordingBasis, humidity: LogHumidity, clock: TimeFormat['clock']) {
    this.#basis = basis;
    this.#clock = clock;
    this.#outside = countOutside(basis.envelopes);
    this.#states = countStates(basis);
    const stateOf = (airCelsius: number, value: number, pressure: number) =>
      recordedState(airCelsius, pressure, humidity, value);
    this.#cells = rowCells(stateOf, this.#states.add);
  }

  add({ time, airCelsius, humidity, pressure, speed }: RowChunk): void {
    if (this.#step === 0) this.#step = usualStep([...time.filter(Number.isFinite)]);
    for (let row = 0; row < time.length; row++) {
      const rowSpeed = speed?.[row];
      const hasSpeed = rowSpeed !== undefined && Number.isFinite(rowSpeed);
      if (rowSpeed !== undefined && !hasSpeed) this.#faults.speedless += 1;
      this.#addRow(
        time[row] ?? Number.NaN,
        airCelsius[row] ?? Number.NaN,
        humidity[row] ?? Number.NaN,
        pressure === undefined ? this.#basis.pressure : (pressure[row] ?? Number.NaN),
        hasSpeed ? rowSpeed : undefined,
      );
    }
    this.#rows += time.length;
  }

  /** @returns undefined where no time has a value */
  finish(columns: readonly UsedColumn[], brokenRows: number): RecordingSummary | undefined {
    this.#cells.finish();
    const [steps, usedSeconds] = [this.#steps, this.#usedSeconds];
    if (steps === undefined || usedSeconds === 0) return undefined;
    const shown = (time: number): string => showTime(time, this.#clock);
    const [from, to, seconds] = [shown(this.#first), shown(this.#before.time), steps.elapsed];
    const { faults: ofStates, sensors, ranges, density } = this.#states.finish(shown);
    const ofTimes = faultsShown(steps.faults, shown);
    const speed = this.#speeds.finish();
    return {
      basis: this.#basis,
      extent: { rows: this.#rows, from, to, seconds, usedSeconds, step: this.#step, columns },
      faults: { brokenRows, ...this.#faults, ...ofStates, ...ofTimes },
      outside: this.#outside.finish(usedSeconds, shown),
      sensors,
      ramps: rampsShown(this.#ramps.finish(), shown),
      ranges: { ...ranges, ...(speed === undefined ? {} : { speed }) },
      density,
    };
  }

  #addRow(time: number, airCelsius: number, value: number, pressure: number, speed: number | undefined): void {
    if (!Number.isFinite(time)) {
      this.#faults.timeless += 1;
      return;
    }
    const before = this.#before;
    const steps = this.#stepTo(time);
    before.time = time;
    before.speed = speed;
    if (!Number.isFinite(airCelsius) || !Number.isFinite(value) || !Number.isFinite(pressure)) {
      this.#faults.valueless += 1;
      before.cell = undefined;
      return;
    }
    before.cell = this.#cells.of(time, airCelsius, value, pressure);
    this.#ramps.add(steps.elapsed, time, airCelsius);
  }

  #stepTo(time: number): TimeSteps {
    if (this.#steps === undefined) {
      this.#steps = timeSteps(time, this.#step, this.#clock === 'local');
      this.#first = time;
    } else {
      this.#stand(this.#before, this.#steps.to(time));
      if (this.#steps.broken) this.#ramps.interrupt();
    }
    return this.#steps;
  }

  /** The row before stands for these seconds. */
  #stand({ cell, time, speed }: RowBefore, seconds: number): void {
    if (cell === undefined) return;
    cell.seconds += seconds;
    if (cell.state === undefined) return;
    this.#usedSeconds += seconds;
    this.#outside.add(cell.state, speed, time, seconds);
    if (speed !== undefined) this.#speeds.add(speed, seconds);
  }
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
