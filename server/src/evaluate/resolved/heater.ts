/** How the heater of a humidity probe is used, and what it makes the sensor warmer than the air by. */
import type { Located } from '../../model/located.ts';
import type { Heater, HumidityProbe } from '../../model/model-types.generated.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { FactInput } from '../facts/fact.ts';
import { lazyInput } from '../facts/inputs.ts';
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

/** What the sensor is warmer than the air by, in K, and where that is written. */
export interface SensorWarming {
  readonly rise: number;
  readonly input: FactInput;
}

/** @returns undefined where the heater cannot be read, or is on and nothing says how far it heats */
export function sensorWarming({ known, on, located, rise }: HeaterUse): SensorWarming | undefined {
  if (!known) return undefined;
  if (!on) {
    const origin = located?.origin;
    return { rise: 0, input: { label: 'heater', text: 'off', ...(origin === undefined ? {} : { origin }) } };
  }
  if (rise === undefined) return undefined;
  const { value } = rise;
  const text = () => showQuantity(value.value, 'temperature-difference');
  return { rise: value.value, input: lazyInput('heater rise', text, rise) };
}
