/** The coldest and the hottest air of a phase: where what hardly depends on the humidity has its extremes. */
import type { AirState } from '../../physics/air/moist-air.ts';
import type { PhaseEvaluation } from './phase.ts';

/** Each at its wettest and at the highest pressure; one state alone where the temperature does not vary. */
export function temperatureEnds({ envelope, sampled }: PhaseEvaluation): readonly AirState[] {
  const { low, high } = envelope.temperature.value;
  return [...new Set([low, high])].flatMap((celsius) => wettestAt(celsius, sampled?.samples ?? []) ?? []);
}

function wettestAt(celsius: number, samples: readonly { readonly state: AirState }[]): AirState | undefined {
  let found: AirState | undefined;
  for (const { state } of samples) {
    if (state.airCelsius !== celsius) continue;
    const wetter =
      found === undefined || state.pressure > found.pressure || state.vapourPressure > found.vapourPressure;
    if (wetter) found = state;
  }
  return found;
}
