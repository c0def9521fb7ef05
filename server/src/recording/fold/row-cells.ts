/**
 * Rows that say the same are worked out once. A logger writes rounded values of slowly changing air, so that the same
 * row comes again and again. A table with one place for each of many states gathers their time; the state that is
 * thrown out of its place by another is settled, so that the memory stays the same however long the log is.
 */
import type { RecordedState } from './recorded-state.ts';

export interface Cell {
  readonly airCelsius: number;
  readonly humidity: number;
  readonly pressure: number;
  /** Undefined where such air cannot be. */
  readonly state: RecordedState | undefined;
  /** When its first row was, s. */
  readonly time: number;
  rows: number;
  /** s for which the rows stand; the reader adds them once the time of the next row is known. */
  seconds: number;
}

export interface RowCells {
  /** The cell of a row. */
  of(time: number, airCelsius: number, humidity: number, pressure: number): Cell;
  /** Settles every cell that is still in the table. */
  finish(): void;
}

const PLACES = 1 << 15;

export function rowCells(
  stateOf: (airCelsius: number, humidity: number, pressure: number) => RecordedState | undefined,
  settle: (cell: Cell) => void,
): RowCells {
  const cells = new Array<Cell | undefined>(PLACES).fill(undefined);
  return {
    of(time, airCelsius, humidity, pressure) {
      const place = placeOf(airCelsius, humidity, pressure);
      const known = cells[place];
      if (known?.airCelsius === airCelsius && known.humidity === humidity && known.pressure === pressure) {
        known.rows += 1;
        return known;
      }
      if (known !== undefined) settle(known);
      const state = stateOf(airCelsius, humidity, pressure);
      const cell = { airCelsius, humidity, pressure, state, time, rows: 1, seconds: 0 };
      cells[place] = cell;
      return cell;
    },
    finish() {
      for (const cell of cells) if (cell !== undefined) settle(cell);
      cells.fill(undefined);
    },
  };
}

/** Values are multiplied, so that their decimals count, before they are cut to integers and mixed. */
function placeOf(airCelsius: number, humidity: number, pressure: number): number {
  let mixed = Math.imul(airCelsius * 1000, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (humidity * 100_000), 0x85ebca6b);
  mixed = Math.imul(mixed ^ pressure, 0xc2b2ae35);
  return (mixed ^ (mixed >>> 15)) & (PLACES - 1);
}
