/** How far the pressure of a space may stand above that of the air outside. */
import { STANDARD_ATMOSPHERE } from '../../physics/air/standard-atmosphere.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Fact } from '../facts/fact.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import type { SpacePressure } from './space-pressure.ts';

/** None where the space gives no pressure, or none above that outside. */
export function overPressureFacts({ source, high, input }: SpacePressure, settings: SiteSettings): readonly Fact[] {
  const { airPressure } = settings;
  if (source !== 'given' || high <= airPressure.value) return [];
  const outside = {
    label: 'air outside',
    text: `${showQuantity(airPressure.value, 'pressure')} (altitude, ISO 2533)`,
    ...(airPressure.origin === undefined ? {} : { origin: airPressure.origin }),
  };
  return [
    {
      id: 'over-pressure',
      title: 'highest pressure above the air outside',
      dimension: 'pressure',
      value: high - airPressure.value,
      relation: 'p − p(outside)',
      inputs: [input, outside],
      formulas: [STANDARD_ATMOSPHERE],
      notes: [],
    },
  ];
}
