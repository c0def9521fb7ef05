/** How the heater of a humidity probe is used. */
import type { Located } from '../model/located.ts';
import type { Heater, HumidityProbe } from '../model/model-types.generated.ts';
import type { Quantity } from '../quantity/quantity.ts';

export interface HeaterUse {
  readonly on: boolean;
  readonly mode: 'off' | 'continuous' | 'on-demand';
  readonly located: Located<Heater> | undefined;
  /** What is asked of the heater; absent while it is off or nothing is asked. */
  readonly rise: Located<Quantity> | undefined;
}

export function heaterUse(probe: HumidityProbe | undefined): HeaterUse {
  const located = probe?.heater;
  const mode = located?.value.mode?.value ?? 'off';
  const on = mode !== 'off';
  return { on, mode, located, rise: on ? located?.value.rise : undefined };
}
