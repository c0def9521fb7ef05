/**
 * What an error of the air temperature costs a quantity: the error times the quantity's sensitivity to the air
 * temperature, the vapour pressure held, since the humidity sensor measures that whatever the thermometer reads.
 */
import { valueIfOk } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { partialsOf } from '../../physics/air/state-quantities.ts';
import { QUANTITY_NAMES, type QuantityName } from '../../quantity/quantities.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { type WorstState, worstOverPhases } from '../air/worst-fact.ts';
import type { Given } from '../facts/given.ts';

/** The part of a tolerance that one error of the air temperature may take. Common practice, no source. */
export const SHARE_OF_TOLERANCE = 1 / 3;

/** Size of the change of a quantity per K of air temperature. */
export type Sensitivity = (state: AirState) => number | undefined;

/** An error of the air temperature in K; it depends on temperature, pressure and phase, and not on the humidity. */
export type ErrorAt = (state: AirState, phase: PhaseEnvelope) => Given<number>;

/** The points of a space share the sampled states of its envelopes, and so their sensitivities. */
const SENSITIVITIES: ReadonlyMap<QuantityName, Sensitivity> = new Map(
  QUANTITY_NAMES.map((name) => [name, remembered((state: AirState) => computedSensitivity(name, state))]),
);

export function sensitivityOf(quantity: QuantityName): Sensitivity {
  return SENSITIVITIES.get(quantity) ?? (() => undefined);
}

function computedSensitivity(quantity: QuantityName, state: AirState): number | undefined {
  // The dew point at another pressure depends on no air temperature.
  if (quantity === 'dew-point-at') return 0;
  const partials = valueIfOk(partialsOf(state, quantity));
  return partials === undefined ? undefined : Math.abs(partials.airCelsius);
}

/** Where an error costs most, and what: the product of error and sensitivity is searched, not either alone. */
export function worstCost(
  phases: readonly PhaseEvaluation[],
  errorAt: ErrorAt,
  sensitivityAt: Sensitivity,
): WorstState | undefined {
  let worst: WorstState | undefined;
  for (const phase of phases) {
    const found = worstOverPhases([phase], 'highest', costIn(phase.envelope, errorAt, sensitivityAt));
    if (found !== undefined && (worst === undefined || found.value > worst.value)) worst = found;
  }
  return worst;
}

/** The error is computed once for all humidities of a temperature and a pressure. */
function costIn(envelope: PhaseEnvelope, errorAt: ErrorAt, sensitivityAt: Sensitivity) {
  const errors = new Map<number, Map<number, number | undefined>>();
  const errorOf = (state: AirState): number | undefined => {
    let atPressure = errors.get(state.pressure);
    if (atPressure === undefined) {
      atPressure = new Map();
      errors.set(state.pressure, atPressure);
    }
    if (!atPressure.has(state.airCelsius)) atPressure.set(state.airCelsius, valueIfOk(errorAt(state, envelope)));
    return atPressure.get(state.airCelsius);
  };
  return (state: AirState): number | undefined => {
    const error = errorOf(state);
    const sensitivity = error === undefined ? undefined : sensitivityAt(state);
    return error === undefined || sensitivity === undefined ? undefined : error * sensitivity;
  };
}
