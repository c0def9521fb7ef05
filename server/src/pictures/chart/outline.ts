/** The outline of an envelope at one pressure, with the corners that the cut at saturation gives it. */
import { cutTemperatures, type PhaseEnvelope, stateAt } from '../../evaluate/air/envelope.ts';
import type { AirState } from '../../physics/air/moist-air.ts';

/** Between two of them a humidity line bends by less than a pixel. */
const STEPS = 48;

/** Along the driest air from cold to hot, and back along the wettest. @param pressure Pa */
export function outlineOf(envelope: PhaseEnvelope, pressure: number): readonly AirState[] {
  const { low, high } = envelope.temperature.value;
  const even = Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
  const celsius = [...even, ...cutTemperatures(envelope, pressure)].sort((one, other) => one - other);
  const driest = celsius.map((at) => stateAt(envelope, at, 0, pressure));
  const wettest = celsius.map((at) => stateAt(envelope, at, 1, pressure));
  return [...driest, ...wettest.reverse()];
}
