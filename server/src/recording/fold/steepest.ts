/** Finds the steepest rise and fall of the air temperature that lasted. */
export interface Steepest {
  /** @param elapsed s since the first row, gaps left out @param time as the log's clock has it, s */
  add(elapsed: number, time: number, celsius: number): void;
  /** What comes next does not belong to what was before. */
  interrupt(): void;
  finish(): { readonly rising: SteepStretch | undefined; readonly falling: SteepStretch | undefined };
}

export interface SteepStretch {
  /** K/s */
  readonly perSecond: number;
  readonly from: number;
  readonly to: number;
}

/** A change is sustained where it goes on for ten minutes. */
const STRETCH = 600;
/** Rows are averaged over a minute, so that the noise of single rows is no ramp. */
const AVERAGE_OVER = 60;

interface Average {
  readonly elapsed: number;
  readonly time: number;
  readonly celsius: number;
}

export function steepest(): Steepest {
  let rising: SteepStretch | undefined;
  let falling: SteepStretch | undefined;
  let averages: Average[] = [];
  let start = 0;
  let rows = 0;
  const sums = { elapsed: 0, time: 0, celsius: 0 };

  const compare = (from: Average, to: Average): void => {
    const perSecond = (to.celsius - from.celsius) / (to.elapsed - from.elapsed);
    const stretch = { perSecond, from: from.time, to: to.time };
    if (perSecond > (rising?.perSecond ?? 0)) rising = stretch;
    if (perSecond < (falling?.perSecond ?? 0)) falling = stretch;
  };
  const close = (): void => {
    if (rows === 0) return;
    const now = { elapsed: sums.elapsed / rows, time: sums.time / rows, celsius: sums.celsius / rows };
    Object.assign(sums, { elapsed: 0, time: 0, celsius: 0 });
    rows = 0;
    averages.push(now);
    const firstInside = averages.findIndex(({ elapsed }) => now.elapsed - elapsed < STRETCH);
    const from = averages[firstInside - 1];
    if (from === undefined) return;
    compare(from, now);
    averages = averages.slice(firstInside - 1);
  };
  return {
    add(elapsed, time, celsius) {
      if (rows > 0 && elapsed - start >= AVERAGE_OVER) close();
      if (rows === 0) start = elapsed;
      rows += 1;
      sums.elapsed += elapsed;
      sums.time += time;
      sums.celsius += celsius;
    },
    interrupt() {
      close();
      averages = [];
    },
    finish() {
      close();
      return { rising, falling };
    },
  };
}
