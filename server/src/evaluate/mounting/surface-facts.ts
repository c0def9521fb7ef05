/** The facts of an inner surface, of a wall or a fitting: how close it comes to the dew point, and what it lacks. */
import { WALL_TEMPERATURES } from '../../physics/heat/wall.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { worstFact } from '../air/worst-fact.ts';
import { speedInput } from '../air-temperature/probe-inputs.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { type ColdWall, innerSurface, insulationForMargin, leastMargin } from './surface-margin.ts';

export interface ColdSurface {
  /** Begins the ids of its facts. */
  readonly part: 'wall' | 'fitting';
  readonly wall: ColdWall;
  /** Insulation among the layers, m, and its conductivity, W/(m·K). */
  readonly present: number;
  readonly conductivity: number;
  /** How far above the dew point it shall stay, K. */
  readonly margin: number;
  /** The thickest insulation that is usual, m. */
  readonly thickest: number;
  readonly inputs: readonly FactInput[];
  readonly notes: readonly string[];
}

/** The insulation needed is told only where the margin is not kept. */
export function surfaceFacts(phases: readonly PhaseEvaluation[], surface: ColdSurface): readonly Fact[] {
  const { part, wall, notes } = surface;
  const worst = leastMargin(phases, wall);
  if (worst === undefined) return [];
  const { state, phase } = worst;
  const at = cornerOf(state, phase.envelope.phase, phase.envelope.speed?.value.low);
  const inputs = [...surface.inputs, ...speedInput(phase.envelope)];
  const common = { formulas: [WALL_TEMPERATURES], notes };
  const margin = {
    id: `${part}-margin`,
    title: `least margin of the inner surface of the ${part} to the dew point`,
    dimension: 'temperature-difference' as const,
    relation: 't(surface) − td, with the coldest surroundings and the least air speed',
    ...common,
  };
  const temperature = {
    id: `${part}-inner-surface`,
    title: `inner surface of the ${part} where it is closest to the dew point`,
    dimension: 'temperature' as const,
    relation: 't − (t − t(outside)) R(film) / R(total)',
    ...common,
  };
  const there = { ...worst, value: innerSurface(wall, state, phase.envelope) };
  const facts = [
    { ...worstFact(margin, worst, inputs), at },
    { ...worstFact(temperature, there, inputs), at },
  ];
  if (worst.value >= surface.margin) return facts;
  const thickness = insulationForMargin(phases, wall, surface.present, surface.conductivity, surface.margin);
  const needed = {
    id: `${part}-insulation-needed`,
    title: `insulation of the ${part} that keeps it above the dew point`,
    dimension: 'length' as const,
    at,
    relation: 'the resistance that is lacking, times the conductivity of the insulation, to the next size sold',
    inputs: [...inputs, ...phase.envelope.inputs],
    ...common,
  };
  const missing = `no usual insulation keeps the ${part} so far above the dew point of this air`;
  const usual = thickness !== undefined && thickness <= surface.thickest;
  return [...facts, usual ? { ...needed, value: thickness } : { ...needed, value: undefined, missing }];
}
