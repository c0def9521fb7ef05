/** The pressure of a space: as its entry gives it, else that of the air outside by the altitude of the site. */
import type { Located } from '../../model/located.ts';
import type { Space } from '../../model/model-types.generated.ts';
import { STANDARD_ATMOSPHERE } from '../../physics/air/standard-atmosphere.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Fact, FactInput, KnownFact } from '../facts/fact.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { isUnread } from '../facts/unread.ts';
import type { Span } from './envelope.ts';

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
    const text = showRange(low + base, high + base, 'pressure');
    const input = { label: 'pressure', text, origin: given.origin };
    return { low: low + base, high: high + base, source: gauge && altitudeUnread ? 'unread' : 'given', input };
  }
  const unread = altitudeUnread || isUnread(located, 'pressure', given);
  const where = altitude === undefined ? 'sea level' : `${showQuantity(altitude.value.value, 'length')} altitude`;
  const input = {
    label: 'pressure',
    text: `${showQuantity(airPressure.value, 'pressure')} (${where}, ISO 2533)`,
    ...(altitude === undefined ? {} : { origin: altitude.origin }),
  };
  const source = unread ? 'unread' : altitude === undefined ? 'sea-level' : 'altitude';
  return { low: airPressure.value, high: airPressure.value, source, input };
}

/** A pressure as absolute, in Pa. */
export function absolutePressure({ value, gauge }: Quantity, settings: SiteSettings): number {
  return gauge ? value + settings.airPressure.value : value;
}

const ALTITUDE_PRESSURE_STEP = 100;

/** What the site's altitude makes of the pressure, and that rounded as a person would write it. */
export function altitudePressureFacts({ airPressure, altitude }: SiteSettings): {
  readonly computed: KnownFact;
  readonly rounded: KnownFact;
} {
  const metres = altitude?.value.value ?? 0;
  const input = {
    label: 'altitude',
    text: altitude === undefined ? 'none given, taken as 0 m' : showQuantity(metres, 'length'),
  };
  const base: Omit<Fact, 'id' | 'title' | 'value'> = {
    dimension: 'pressure',
    inputs: [altitude === undefined ? input : { ...input, origin: altitude.origin }],
    formulas: [STANDARD_ATMOSPHERE],
    notes: [],
  };
  return {
    computed: {
      ...base,
      id: 'pressure-from-altitude',
      title: 'air pressure at the altitude',
      value: airPressure.value,
    },
    rounded: {
      ...base,
      id: 'pressure-to-give',
      title: 'air pressure at the altitude, to 0.1 kPa',
      value: Math.round(airPressure.value / ALTITUDE_PRESSURE_STEP) * ALTITUDE_PRESSURE_STEP,
    },
  };
}
