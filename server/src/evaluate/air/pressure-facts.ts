/** The facts of the pressure of a space: its ends, what the altitude makes of it, how far it stands above that outside. */
import { STANDARD_ATMOSPHERE } from '../../physics/air/standard-atmosphere.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Derivation } from '../facts/declared-fact.ts';
import { lazyInput } from '../facts/inputs.ts';
import { figureBound, limit } from '../facts/limit.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import type { SpaceEvaluation } from './space.ts';
import { spaceFact } from './space-fact.ts';

export const lowestPressure = spaceFact('pressure/lowest', {
  title: 'lowest pressure',
  dimension: 'pressure',
  compute: ({ pressure }) => ({
    value: pressure.low,
    derivation: () => ({ inputs: [pressure.input], formulas: [] }),
  }),
});

export const highestPressure = spaceFact('pressure/highest', {
  title: 'highest pressure',
  dimension: 'pressure',
  compute: ({ pressure }) => ({
    value: pressure.high,
    derivation: () => ({ inputs: [pressure.input], formulas: [] }),
  }),
});

/** What a space without a pressure of its own is computed with. */
export const pressureFromAltitude = spaceFact('pressure-from-altitude', {
  title: 'air pressure at the altitude',
  dimension: 'pressure',
  compute: (space) =>
    isByAltitude(space)
      ? { value: space.settings.airPressure.value, derivation: () => fromAltitude(space.settings) }
      : undefined,
});

const ALTITUDE_PRESSURE_STEP = 100;

/** As a person would write it. */
export const pressureToGive = spaceFact('pressure-to-give', {
  title: 'air pressure at the altitude, to 0.1 kPa',
  dimension: 'pressure',
  compute: (space) => {
    if (!isByAltitude(space)) return undefined;
    const value = Math.round(space.settings.airPressure.value / ALTITUDE_PRESSURE_STEP) * ALTITUDE_PRESSURE_STEP;
    return { value, derivation: () => fromAltitude(space.settings) };
  },
});

function isByAltitude({ pressure }: SpaceEvaluation): boolean {
  return pressure.source === 'altitude' || pressure.source === 'sea-level';
}

function fromAltitude({ altitude }: SiteSettings): Derivation {
  const text = (): string =>
    altitude === undefined ? 'none given, taken as 0 m' : showQuantity(altitude.value.value, 'length');
  return { inputs: [lazyInput('altitude', text, altitude)], formulas: [STANDARD_ATMOSPHERE] };
}

/** None where the space gives no pressure, or none above that outside. */
export const overPressure = spaceFact('over-pressure', {
  title: 'highest pressure above the air outside',
  dimension: 'pressure',
  compute: ({ pressure: { source, high, input }, settings: { airPressure } }) => {
    if (source !== 'given' || high <= airPressure.value) return undefined;
    return {
      value: high - airPressure.value,
      derivation: () => {
        const text = () => `${showQuantity(airPressure.value, 'pressure')} (altitude, ISO 2533)`;
        const outside = lazyInput('air outside', text, airPressure);
        return { inputs: [input, outside], relation: 'p − p(outside)', formulas: [STANDARD_ATMOSPHERE] };
      },
    };
  },
});

/** Pa above the air outside. */
const OVER_PRESSURE_LIMIT = 50e3;

/** From here on the pressure of a space can hurt people. */
export const overPressureLimit = limit(overPressure, 'at most', (_: SpaceEvaluation) =>
  figureBound(OVER_PRESSURE_LIMIT, 'pressure'),
);

/** Against the air outside a pressure may be written lower than a vacuum. */
export const pressureOverVacuum = limit(lowestPressure, 'above', (_: SpaceEvaluation) => figureBound(0, 'pressure'));
