/** How far an inner surface stays above the dew point over a whole envelope, and the insulation that a margin takes. */
import { valueIfOk } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { dewPoint } from '../../physics/air/quantities.ts';
import { insulationNeeded, type WallLayer, wallTemperatures } from '../../physics/heat/wall.ts';
import { insulationToBuy } from '../../physics/mathematics/sensible-steps.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { type WorstState, worstOverPhases } from '../air/worst-fact.ts';
import { isUnread } from '../facts/unread.ts';
import { wallConditions } from './space-wall.ts';

/** A wall between the air of a space and its coldest surroundings. */
export interface ColdWall {
  readonly layers: readonly WallLayer[];
  readonly outsideCelsius: number;
}

/** m: more than anybody sells, for where no insulation is enough. */
const NONE_SUFFICES = 1e3;

/** The points of a space share the sampled states of its envelopes. */
const dewPointOf = remembered((state: AirState) => valueIfOk(dewPoint(state)));

/** Where the surface is least far above the dew point, K. */
export function leastMargin(phases: readonly PhaseEvaluation[], wall: ColdWall): WorstState | undefined {
  return worstOfPhases(phases, 'lowest', (state, phase) => {
    const point = dewPointOf(state);
    return point === undefined ? undefined : innerSurface(wall, state, phase) - point;
  });
}

/** °C. */
export function innerSurface({ layers, outsideCelsius }: ColdWall, state: AirState, phase: PhaseEnvelope): number {
  return wallTemperatures(layers, wallConditions(phase, state.airCelsius, outsideCelsius)).insideSurfaceCelsius;
}

/**
 * The next thickness sold of all the insulation, m, that keeps the surface everywhere at least so far above the dew
 * point; undefined where none sold does, as where the air itself is closer to its dew point than that.
 *
 * @param present insulation among the layers, m
 * @param conductivity of the insulation, W/(m·K)
 */
export function insulationForMargin(
  phases: readonly PhaseEvaluation[],
  { layers, outsideCelsius }: ColdWall,
  present: number,
  conductivity: number,
  margin: number,
): number | undefined {
  const added = worstOfPhases(phases, 'highest', (state, phase) => {
    const point = dewPointOf(state);
    if (point === undefined) return undefined;
    const conditions = wallConditions(phase, state.airCelsius, outsideCelsius);
    return valueIfOk(insulationNeeded(layers, conditions, conductivity, point + margin)) ?? NONE_SUFFICES;
  });
  return added === undefined ? undefined : insulationToBuy(present + added.value);
}

/** Over all phases, each with its own air speed. */
function worstOfPhases(
  phases: readonly PhaseEvaluation[],
  direction: 'highest' | 'lowest',
  valueAt: (state: AirState, phase: PhaseEnvelope) => number | undefined,
): WorstState | undefined {
  const sign = direction === 'highest' ? 1 : -1;
  let worst: WorstState | undefined;
  for (const phase of phases) {
    const { speed, located } = phase.envelope;
    // Without an air speed still air is taken; with one that cannot be read nothing is.
    if (isUnread(located, 'speed', speed)) continue;
    const found = worstOverPhases([phase], direction, (state) => valueAt(state, phase.envelope));
    if (found !== undefined && (worst === undefined || sign * found.value > sign * worst.value)) worst = found;
  }
  return worst;
}
