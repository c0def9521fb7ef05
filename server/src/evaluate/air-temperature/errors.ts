/** Everything that keeps a thermometer of a point from reading the air temperature at its humidity probe. */
import { succeed } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import type { EstimatedWarming } from '../../physics/heat/plume.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { type Given, given, positive } from '../facts/given.ts';
import { wallPull } from '../mounting/stem-error.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type ThermometerKind, thermometerOf } from '../resolved/thermometer.ts';
import { headWarming } from './head-warming.ts';
import { type ProbeLag, probeLag } from './probe-lag.ts';

/** The errors that a thermometer makes beside its tolerance, by the names that budgets, costs and rules know them by. */
export const AIR_TEMPERATURE_ERRORS = ['stem-conduction', 'radiation', 'head-warming', 'gradient', 'lag'] as const;

export type AirTemperatureError = (typeof AIR_TEMPERATURE_ERRORS)[number];

/** Sizes of errors in K, each 0 or more, or what would have to be given to know it. */
export interface AirTemperatureErrors {
  /** Heat that the stem leads to or from the wall. */
  readonly stemConduction: Given<number>;
  /** Radiation between the thermometer and the wall. */
  readonly radiation: Given<number>;
  /** Plume or wake of the heated head; none for the unheated head itself. */
  readonly warming: Given<EstimatedWarming>;
  /** Gradient of the space times the spacing of the probes; none for the unheated head itself. */
  readonly gradient: Given<number>;
  readonly lag: ProbeLag;
}

/**
 * The errors of a thermometer at any state of a phase. What does not depend on the state is looked up once.
 *
 * Speeds enter at their low end alone and the surroundings at both their ends: stem conduction, radiation, warming and
 * lag all shrink as the air gets faster, and the wall's pull grows with its distance from the air.
 */
export function airTemperatureErrors(
  point: ResolvedPoint,
  space: SpaceEvaluation,
  kind: ThermometerKind,
): (state: AirState, phase: PhaseEnvelope) => AirTemperatureErrors {
  const pull = wallPull(thermometerOf(point, kind), space);
  const warming = kind === 'own-head' ? () => succeed({ estimate: 0, low: 0, high: 0 }) : headWarming(point);
  const gradient = kind === 'own-head' ? succeed(0) : gradientError(point, space);
  const lag = probeLag(point, kind);
  return (state, phase) => ({
    stemConduction: pull.ok ? pull.value.stemConduction(state, phase) : pull,
    radiation: pull.ok ? pull.value.radiation(state, phase) : pull,
    warming: warming(state, phase),
    gradient,
    lag: lag(state, phase),
  });
}

/** What the air temperature may differ by between the two probes, K. */
export function gradientError(point: ResolvedPoint, space: SpaceEvaluation): Given<number> {
  const gradient = given(space.located.value.gradient?.value.value, 'the space gives no gradient');
  if (!gradient.ok) return gradient;
  const mounting = point.point.airTemperatureProbe?.value.mounting;
  const spacing = positive(mounting?.value.spacing, 'no spacing is given');
  return spacing.ok ? succeed(Math.abs(gradient.value) * spacing.value) : spacing;
}
