import { expect, it } from 'vitest';
import { HUMIDITY_QUANTITIES } from '../../server/src/physics/air/state-quantities.ts';
import { unitOf } from '../../server/src/quantity/dimension.ts';
import { QUANTITY_NAMES, quantityInfo } from '../../server/src/quantity/quantities.ts';

it.each(QUANTITY_NAMES)('%s is told in a unit of its dimension, as files spell it', (name) => {
  const { dimension, unit } = quantityInfo(name);
  expect(unitOf(dimension, unit)?.symbol).toBe(unit);
});

it('what says how humid air is can be reported, and beside it the air temperature and the dew point elsewhere', () => {
  const others = ['air-temperature', 'dew-point-at'];
  expect(QUANTITY_NAMES.toSorted()).toEqual([...HUMIDITY_QUANTITIES, ...others].toSorted());
});
