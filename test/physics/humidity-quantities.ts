import type { HumidityQuantity } from '../../server/src/physics/air/moist-air.ts';

/** Every quantity that says how humid air is. */
export const HUMIDITY_QUANTITIES: readonly HumidityQuantity[] = [
  'relative-humidity',
  'relative-humidity-ice',
  'dew-point',
  'frost-point',
  'vapour-pressure',
  'mixing-ratio',
  'specific-humidity',
  'volume-fraction',
  'absolute-humidity',
  'wet-bulb',
  'specific-enthalpy',
  'vapour-pressure-deficit',
  'dew-point-depression',
];
