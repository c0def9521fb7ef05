/** The extreme of something over a recording, and the first moment of it. */
import type { Moment } from '../../evaluate/recorded/summary.ts';
import type { RecordedState } from './recorded-state.ts';

export interface Extreme {
  readonly value: number;
  readonly time: number;
  readonly state: RecordedState;
}

export interface ExtremeFinder {
  offer(value: number, time: number, state: RecordedState): void;
  found(): Extreme | undefined;
}

/** States come in no order of time, so the earlier of two equal values is told by its time. */
export function extremeFinder(side: 'highest' | 'lowest'): ExtremeFinder {
  const sign = side === 'highest' ? 1 : -1;
  let extreme: Extreme | undefined;
  return {
    offer(value, time, state) {
      if (extreme !== undefined) {
        const further = sign * (value - extreme.value);
        if (further < 0 || (further === 0 && time >= extreme.time)) return;
      }
      extreme = { value, time, state };
    },
    found: () => extreme,
  };
}

export function momentOf({ time, state }: Extreme, shownTime: (time: number) => string): Moment {
  return {
    time: shownTime(time),
    airCelsius: state.air.airCelsius,
    dewPointCelsius: state.dewPointCelsius,
    relativeHumidity: state.values['relative-humidity'],
  };
}
