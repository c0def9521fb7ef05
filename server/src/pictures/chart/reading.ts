/** What air a spot of the moist-air chart stands for, in numbers. */
import { stateOfKnown } from '../../evaluate/air/known-state.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { valueAt } from '../scale.ts';
import type { XY } from '../svg.ts';
import { type ChartPlane, FRAME } from './plane.ts';

const READ: readonly QuantityName[] = [
  'air-temperature',
  'relative-humidity',
  'dew-point',
  'mixing-ratio',
  'wet-bulb',
  'specific-enthalpy',
];

/** @returns undefined beside the plane, and for what is no spot at all */
export function readChart(plane: ChartPlane, [x, y]: XY): string | undefined {
  const isInside = x >= FRAME.left && x <= FRAME.right && y >= FRAME.top && y <= FRAME.bottom;
  if (!isInside) return undefined;
  const known = new Map<QuantityName, number>([
    ['air-temperature', valueAt(plane.temperature, x)],
    [plane.axis, valueAt(plane.humidity, y)],
  ]);
  const state = stateOfKnown(known, plane.pressure, undefined);
  const quantities = state.ok ? state.value.quantities : known;
  const values = READ.flatMap((name) => {
    const value = quantities.get(name);
    const { title, dimension } = quantityInfo(name);
    return value === undefined ? [] : [`${title} ${showQuantity(value, dimension)}`];
  });
  return state.ok ? values.join(', ') : `${values.join(', ')}: ${state.problem}`;
}
