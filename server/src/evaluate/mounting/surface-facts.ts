/** The facts of an inner surface, of a wall or a fitting: how close it comes to the dew point, and what it lacks. */
import { remembered } from '../../base/remembered.ts';
import { exceeds } from '../../base/rounding.ts';
import { WALL_TEMPERATURES } from '../../physics/heat/wall.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { type WorstState, worstFact } from '../air/worst-fact.ts';
import { cornerOf } from '../facts/corner.ts';
import { type Computed, declaredFact, type FactKey } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { speedInput } from '../facts/inputs.ts';
import { type ColdWall, innerSurface, insulationForMargin, leastMargin } from './surface-margin.ts';

export interface ColdSurface {
  readonly phases: readonly PhaseEvaluation[];
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

export interface SurfaceFacts<in Subject> {
  readonly margin: FactKey<Subject, 'temperature-difference'>;
  readonly innerSurface: FactKey<Subject, 'temperature'>;
  /** Only where the margin is not kept. */
  readonly insulationNeeded: FactKey<Subject, 'length'>;
}

/** @param part begins the ids */
export function surfaceFacts<Subject extends object>(
  part: 'wall' | 'fitting',
  surfaceOf: (subject: Subject) => ColdSurface | undefined,
): SurfaceFacts<Subject> {
  const coldest = remembered((subject: Subject) => coldestOf(surfaceOf(subject)));
  const where = (compute: (coldest: ColdestSurface) => Computed | undefined) => (subject: Subject) => {
    const known = coldest(subject);
    return known === undefined ? undefined : compute(known);
  };
  return {
    margin: declaredFact(`${part}-margin`, {
      title: `least margin of the inner surface of the ${part} to the dew point`,
      dimension: 'temperature-difference',
      compute: where((cold) =>
        surfaceFact(cold, cold.worst.value, 't(surface) − td, with the coldest surroundings and the least air speed'),
      ),
    }),
    innerSurface: declaredFact(`${part}-inner-surface`, {
      title: `inner surface of the ${part} where it is closest to the dew point`,
      dimension: 'temperature',
      compute: where((cold) => {
        const { wall } = cold.surface;
        const { state, phase } = cold.worst;
        const celsius = innerSurface(wall, state, phase.envelope);
        return surfaceFact(cold, celsius, 't − (t − t(outside)) R(film) / R(total)');
      }),
    }),
    insulationNeeded: declaredFact(`${part}-insulation-needed`, {
      title: `insulation of the ${part} that keeps it above the dew point`,
      dimension: 'length',
      compute: where((cold) => insulationFact(part, cold)),
    }),
  };
}

interface ColdestSurface {
  readonly surface: ColdSurface;
  /** Where it is least far above the dew point, K. */
  readonly worst: WorstState;
}

function coldestOf(surface: ColdSurface | undefined): ColdestSurface | undefined {
  const worst = surface === undefined ? undefined : leastMargin(surface.phases, surface.wall);
  return surface === undefined || worst === undefined ? undefined : { surface, worst };
}

function surfaceFact({ surface, worst }: ColdestSurface, value: number, relation: string): Computed {
  const { envelope } = worst.phase;
  const inputs = () => [...surface.inputs, ...speedInput(envelope)];
  const base = { relation, formulas: [WALL_TEMPERATURES], notes: surface.notes };
  const at = cornerOf(worst.state, envelope.phase, envelope.speed?.value.low);
  return { ...worstFact(base, { ...worst, value }, inputs), at };
}

function insulationFact(part: string, { surface, worst }: ColdestSurface): Computed | undefined {
  const { phases, wall, present, conductivity, margin, thickest, notes } = surface;
  if (!exceeds(margin, worst.value)) return undefined;
  const thickness = insulationForMargin(phases, wall, present, conductivity, margin);
  const { envelope } = worst.phase;
  const found = {
    at: cornerOf(worst.state, envelope.phase, envelope.speed?.value.low),
    derivation: () => ({
      inputs: [...surface.inputs, ...speedInput(envelope), ...envelope.inputs],
      relation: 'the resistance that is lacking, times the conductivity of the insulation, to the next size sold',
      formulas: [WALL_TEMPERATURES],
      notes,
    }),
  };
  if (thickness !== undefined && thickness <= thickest) return { value: thickness, ...found };
  const missing = `no usual insulation keeps the ${part} so far above the dew point of this air`;
  return { value: undefined, missing, ...found };
}
