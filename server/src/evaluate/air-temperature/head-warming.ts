/** What a heated head adds to the air at the air-temperature probe. */
import { fail, succeed } from '../../base/outcome.ts';
import { dryAirProperties } from '../../physics/air/air-properties.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { type HeatedHead, headConductance } from '../../physics/heat/head-conductance.ts';
import { type EstimatedWarming, plumeWarming, wakeWarming } from '../../physics/heat/plume.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import { heatedHead } from '../dryness/heated-head.ts';
import { type Given, positive } from '../facts/given.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

/** Below this speed, m/s, a plume rises as in still air; from it on the wake carries the warmth. Common practice. */
export const PLUME_SPEED = 0.2;

export const WARMING_NOTES: readonly string[] = [
  'An estimate within a factor of two, at the least air speed: more air dilutes it.',
  'Below, beside and upstream of the head nothing is added; above it, only while the air may be slower than 0.2 m/s.',
];

const NO_WARMING: EstimatedWarming = { estimate: 0, low: 0, high: 0 };

/**
 * The warming in K at the air-temperature probe of a point, for any state of a phase.
 * @param spacing of the two probes in m, where another than the mounting's is asked about
 */
export function headWarming(
  point: ResolvedPoint,
  spacing?: number,
): (state: AirState, phase: PhaseEnvelope) => Given<EstimatedWarming> {
  const { heater } = point;
  const mounting = point.point.airTemperatureProbe?.value.mounting?.value;
  const position = mounting?.position?.value;
  if (!heater.known) return () => fail('the heater cannot be read');
  if (!heater.on) return () => succeed(NO_WARMING);
  if (position === undefined) return () => fail('no position of the air-temperature probe is given');
  if (position !== 'above' && position !== 'downstream') return () => succeed(NO_WARMING);
  const distance = spacing === undefined ? positive(mounting?.spacing, 'no spacing is given') : succeed(spacing);
  if (!distance.ok) return () => distance;
  const rise = positive(heater.rise, 'no rise is asked of the heater');
  if (!rise.ok) return () => rise;
  const head = heatedHead(point);
  if (!head.ok) return () => head;
  return (state, phase) => {
    const speed = phase.speed?.value.low;
    if (speed === undefined) return fail('no air speed is given');
    if (position === 'above' && speed >= PLUME_SPEED) return succeed(NO_WARMING);
    const air = dryAirProperties(state.airCelsius, state.pressure);
    const ambient = { celsius: state.airCelsius, ...air };
    if (position === 'above') {
      const heat = heatToAir(head.value.geometry, head.value.power, speed, rise.value, state);
      return succeed(plumeWarming(heat, distance.value, rise.value, ambient));
    }
    const wakeSpeed = Math.max(speed, PLUME_SPEED);
    const heat = heatToAir(head.value.geometry, head.value.power, wakeSpeed, rise.value, state);
    return succeed(wakeWarming(heat, distance.value, wakeSpeed, head.value.geometry, rise.value, ambient));
  };
}

/** The heat that convection takes from the head, W: no more than its share of what the heater has. */
function heatToAir(head: HeatedHead, power: number, speed: number, rise: number, state: AirState): number {
  const film = dryAirProperties(state.airCelsius + rise / 2, state.pressure);
  const { convection, total } = headConductance(head, speed, rise, state.airCelsius, film);
  return convection * Math.min(rise, power / total);
}
