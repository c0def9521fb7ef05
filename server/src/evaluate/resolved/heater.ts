/** How the heater of a humidity probe is used. */
import type { Located } from '../../model/located.ts';
import type { Heater, HumidityProbe } from '../../model/model-types.generated.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import { isUnread } from '../facts/unread.ts';

export interface HeaterUse {
  /** False where a heater is written and its mode cannot be read. */
  readonly known: boolean;
  readonly on: boolean;
  readonly mode: 'off' | 'continuous' | 'on-demand';
  readonly located: Located<Heater> | undefined;
  /** What is asked of the heater; absent while it is off or nothing is asked. */
  readonly rise: Located<Quantity> | undefined;
}

export function heaterUse(probe: Located<HumidityProbe> | undefined): HeaterUse {
  const located = probe?.value.heater;
  const given = located?.value.mode?.value;
  const known = located === undefined ? !isUnread(probe, 'heater', located) : given !== undefined;
  const mode = given ?? 'off';
  const on = mode !== 'off';
  return { known, on, mode, located, rise: on ? located?.value.rise : undefined };
}
