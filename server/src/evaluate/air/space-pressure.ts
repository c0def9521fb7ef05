/** The pressure of a space: as its entry gives it, else that of the air outside by the altitude of the site. */

import type { Span } from '../../base/span.ts';
import type { Located } from '../../model/located.ts';
import type { Space } from '../../model/model-types.generated.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { FactInput } from '../facts/fact.ts';
import { lazyInput } from '../facts/inputs.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { isUnread } from '../facts/unread.ts';

export interface SpacePressure extends Span {
  /** `unread` where a pressure or the altitude is written and cannot be read: the numbers are then a guess. */
  readonly source: 'given' | 'altitude' | 'sea-level' | 'unread';
  readonly input: FactInput;
}

export function spacePressure(located: Located<Space>, settings: SiteSettings): SpacePressure {
  const given = located.value.pressure;
  const { airPressure, altitude, altitudeUnread } = settings;
  if (given !== undefined) {
    const { low, high, gauge } = given.value;
    const base = gauge ? airPressure.value : 0;
    const input = lazyInput('pressure', () => showRange(low + base, high + base, 'pressure'), given);
    return { low: low + base, high: high + base, source: gauge && altitudeUnread ? 'unread' : 'given', input };
  }
  const unread = altitudeUnread || isUnread(located, 'pressure', given);
  const text = (): string => {
    const where = altitude === undefined ? 'sea level' : `${showQuantity(altitude.value.value, 'length')} altitude`;
    return `${showQuantity(airPressure.value, 'pressure')} (${where}, ISO 2533)`;
  };
  const input = lazyInput('pressure', text, altitude);
  const source = unread ? 'unread' : altitude === undefined ? 'sea-level' : 'altitude';
  return { low: airPressure.value, high: airPressure.value, source, input };
}

/** A pressure as absolute, in Pa. */
export function absolutePressure({ value, gauge }: Quantity, settings: SiteSettings): number {
  return gauge ? value + settings.airPressure.value : value;
}
