/** Follows the clock of a log from row to row: how long each row stands, and what is wrong with the times. */
export interface TimeSteps {
  /** @returns how many seconds the row before stands for, now that the time of the next one is known */
  to(time: number): number;
  /** s since the first row, as if the clock had never jumped. */
  readonly elapsed: number;
  /** True where the last step was a gap or went backwards, so that the rows on its two sides do not belong together. */
  readonly broken: boolean;
  readonly faults: TimeFaults;
}

export interface TimeFaults {
  duplicates: number;
  backwards: number;
  gaps: number;
  gapSeconds: number;
  longestGap: { readonly seconds: number; readonly from: number } | undefined;
  clockForward: number;
  clockBack: number;
}

const HOUR = 3600;
const DAY = 86_400;
/** A step of more than so many usual steps is a gap. */
const GAP_FROM = 3;
/** Above this step, an hour more or less may as well be a row more or less. */
const LONGEST_STEP_TO_TELL_AN_HOUR = HOUR / 2;

/**
 * @param start time of the first row, s
 * @param step usual time between two rows, s
 * @param local true where the log has local time, which jumps twice a year
 */
export function timeSteps(start: number, step: number, local: boolean): TimeSteps {
  const faults: TimeFaults = {
    duplicates: 0,
    backwards: 0,
    gaps: 0,
    gapSeconds: 0,
    longestGap: undefined,
    clockForward: 0,
    clockBack: 0,
  };
  let before = start;
  let elapsed = 0;
  let broken = false;
  const isJump = (difference: number, hours: 1 | -1): boolean =>
    local &&
    step <= LONGEST_STEP_TO_TELL_AN_HOUR &&
    Math.abs(difference - hours * HOUR - step) <= step / 2 &&
    isSundayNight(before);

  const secondsOf = (difference: number): number => {
    if (difference > 0 && difference <= GAP_FROM * step) return difference;
    if (difference === 0) {
      faults.duplicates += 1;
      return 0;
    }
    if (isJump(difference, 1)) {
      faults.clockForward += 1;
      return difference - HOUR;
    }
    if (isJump(difference, -1)) {
      faults.clockBack += 1;
      return difference + HOUR;
    }
    broken = true;
    if (difference < 0) {
      faults.backwards += 1;
      return 0;
    }
    const missing = difference - step;
    faults.gaps += 1;
    faults.gapSeconds += missing;
    if (missing > (faults.longestGap?.seconds ?? 0)) faults.longestGap = { seconds: missing, from: before };
    return step;
  };

  return {
    faults,
    get elapsed() {
      return elapsed;
    },
    get broken() {
      return broken;
    },
    to(time) {
      broken = false;
      const seconds = secondsOf(time - before);
      elapsed += seconds;
      before = time;
      return seconds;
    },
  };
}

/** Most of the world changes to and from summer time between midnight and four in the night to a Sunday. */
function isSundayNight(time: number): boolean {
  const weekday = (Math.floor(time / DAY) + 4) % 7; // 1970 began on a Thursday
  return weekday === 0 && time % DAY < 4 * HOUR;
}

/** The usual time between two rows: the median of the steps forward among the first rows, 0 where there is none. */
export function usualStep(times: readonly number[]): number {
  const steps = times.flatMap((time, index) => {
    const step = time - (times[index - 1] ?? time);
    return step > 0 ? [step] : [];
  });
  steps.sort((one, other) => one - other);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}
