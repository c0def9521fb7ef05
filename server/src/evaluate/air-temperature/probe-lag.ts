/** How far probes trail the air temperature while it changes at the ramp of a phase. */
import { succeed } from '../../base/outcome.ts';
import { dryAirProperties } from '../../physics/air/air-properties.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { rampDifference, rampLag, timeConstantAtSpeed } from '../../physics/heat/lag.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import { type Given, given, positive } from '../facts/given.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import type { ThermometerKind } from '../resolved/thermometer.ts';

export interface ProbeLag {
  /** How far the thermometer trails the air, K; 0 or more. */
  readonly thermometer: Given<number>;
  /** How far the humidity probe and the thermometer are apart while both trail, K; 0 or more. */
  readonly difference: Given<number>;
}

export const LAG_NOTES: readonly string[] = [
  'At the least air speed, where probes are slowest, once the ramp has run for long.',
  'The response of the humidity probe is taken for its temperature too.',
];

/** The lag of a point's probes for any state of a phase. */
export function probeLag(
  point: ResolvedPoint,
  thermometer: ThermometerKind,
): (state: AirState, phase: PhaseEnvelope) => ProbeLag {
  return (state, phase) => {
    const ramp = given(phase.located.value.ramp?.value.value, 'the phase gives no ramp');
    if (!ramp.ok) return { thermometer: ramp, difference: ramp };
    const rate = Math.abs(ramp.value);
    const ofHead = headTimeConstant(point, state, phase);
    if (thermometer === 'own-head')
      return { thermometer: lagAt(rate, ofHead), difference: ofHead.ok ? succeed(0) : ofHead };
    const ofProbe = probeTimeConstant(point, state, phase);
    return { thermometer: lagAt(rate, ofProbe), difference: differenceAt(rate, ofHead, ofProbe) };
  };
}

function lagAt(rate: number, timeConstant: Given<number>): Given<number> {
  return timeConstant.ok ? succeed(rampLag(rate, timeConstant.value)) : timeConstant;
}

function differenceAt(rate: number, ofHead: Given<number>, ofProbe: Given<number>): Given<number> {
  if (!ofHead.ok) return ofHead;
  if (!ofProbe.ok) return ofProbe;
  return succeed(Math.abs(rampDifference(rate, ofHead.value, ofProbe.value)));
}

function headTimeConstant({ humidityProbeModel }: ResolvedPoint, state: AirState, phase: PhaseEnvelope): Given<number> {
  const model = humidityProbeModel?.model?.value;
  const response = positive(model?.response, 'the kit gives no response of the humidity probe');
  const diameter = positive(model?.head?.value.diameter, 'the kit gives no diameter of the head');
  return atSpeed(response, diameter, state, phase);
}

function probeTimeConstant(point: ResolvedPoint, state: AirState, phase: PhaseEnvelope): Given<number> {
  const model = point.airTemperatureProbeModel?.model?.value;
  const response = positive(model?.response, 'the kit gives no response of the air-temperature probe');
  const diameter = positive(model?.stem?.value.diameter, 'the kit gives no diameter of the stem');
  return atSpeed(response, diameter, state, phase);
}

/** Lying across the flow; how long the cylinder is then does not matter. */
function atSpeed(
  response: Given<number>,
  diameter: Given<number>,
  { airCelsius, pressure }: AirState,
  phase: PhaseEnvelope,
): Given<number> {
  const speed = given(phase.speed?.value.low, 'no air speed is given');
  if (!response.ok) return response;
  if (!diameter.ok) return diameter;
  if (!speed.ok) return speed;
  const cylinder = { diameter: diameter.value, length: diameter.value, axis: 'horizontal' as const };
  return succeed(timeConstantAtSpeed(response.value, cylinder, speed.value, dryAirProperties(airCelsius, pressure)));
}
