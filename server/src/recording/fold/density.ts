/** How long the air was where, over air temperature and dew point: what a chart lays under its envelopes. */
import type { Density } from '../../evaluate/recorded/summary.ts';

export interface DensityCount {
  add(airCelsius: number, dewPointCelsius: number, seconds: number): void;
  finish(): Density;
}

const FINEST_STEP = 0.5;
const MOST_CELLS = 4000;
/** Numbers of cells in a row, by which one number stands for a cell: far more than any air needs. */
const ROW = 1 << 16;

export function countDensity(): DensityCount {
  let step = FINEST_STEP;
  let cells = new Map<number, { readonly air: number; readonly dewPoint: number; seconds: number }>();
  const add = (airCelsius: number, dewPointCelsius: number, seconds: number): void => {
    const air = Math.floor(airCelsius / step);
    const dewPoint = Math.floor(dewPointCelsius / step);
    const known = cells.get(air * ROW + dewPoint);
    if (known !== undefined) known.seconds += seconds;
    else {
      cells.set(air * ROW + dewPoint, { air, dewPoint, seconds });
      if (cells.size > MOST_CELLS) coarsen();
    }
  };
  const coarsen = (): void => {
    const finer = cells.values();
    const finerStep = step;
    step *= 2;
    cells = new Map();
    for (const { air, dewPoint, seconds } of finer) add(air * finerStep, dewPoint * finerStep, seconds);
  };
  return {
    add,
    finish: () => ({
      step,
      cells: [...cells.values()]
        .sort((one, other) => one.air - other.air || one.dewPoint - other.dewPoint)
        .map(({ air, dewPoint, seconds }) => [air * step, dewPoint * step, seconds] as const),
    }),
  };
}
