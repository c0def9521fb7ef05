/** The lines of the moist-air chart along which one quantity stays the same. */
import type { HumidityQuantity } from '../../physics/air/moist-air.ts';
import { airState } from '../../physics/air/state.ts';
import type { XY } from '../svg.ts';
import { type ChartPlane, spotOfAir } from './plane.ts';

const STEPS = 80;

/** The line of a humidity quantity (canonical) over the temperatures of the chart, where such air exists. */
export function lineOfQuantity(plane: ChartPlane, quantity: HumidityQuantity, value: number): readonly XY[] {
  const { low, high } = plane.temperature;
  return Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS).flatMap((celsius) => {
    const state = airState(celsius, plane.pressure, { quantity, value });
    return state.ok ? [spotOfAir(plane, state.value)] : [];
  });
}
