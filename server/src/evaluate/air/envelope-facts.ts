/** What the box of a phase is told by: why it cannot be, where it is cut, which published range it leaves. */
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import type { FactFamily } from '../facts/declared-fact.ts';
import { BOX_FACTS, type BoxFactName, type BoxValue } from './envelope-limits.ts';
import type { PhaseEvaluation } from './phase.ts';
import type { SpaceEvaluation } from './space.ts';
import { phaseFact } from './space-fact.ts';

export type PhaseFact = FactFamily<SpaceEvaluation, string | undefined>;

/** By the phase, or undefined for the one envelope of a space. */
export const boxFacts = Object.fromEntries(
  Object.keys(BOX_FACTS).map((name) => [name, boxFact(name as BoxFactName)]),
) as Readonly<Record<BoxFactName, PhaseFact>>;

function boxFact(name: BoxFactName): PhaseFact {
  const { title, dimension } = BOX_FACTS[name];
  return phaseFact(name, {
    title: () => title,
    dimension,
    compute: (space, phase) => {
      const evaluated = phaseOf(space, phase);
      const found = evaluated === undefined ? undefined : boxValues(evaluated).find(({ fact }) => fact === name);
      if (evaluated === undefined || found === undefined) return undefined;
      const { value, at } = found;
      const formulas = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
      return { value, at, derivation: () => ({ inputs: evaluated.envelope.inputs, formulas }) };
    },
  });
}

function boxValues({ impossible, cut }: PhaseEvaluation): readonly BoxValue[] {
  return [
    ...(impossible === undefined ? [] : [impossible.found, impossible.limit]),
    ...(cut === undefined ? [] : [cut.highestDewPoint, cut.lowestTemperature]),
  ];
}

/** The temperature, or the pressure, that leaves the published range of a formula. */
export const outsideFormula: PhaseFact = phaseFact('outside-formula', {
  title: (phase, space) => `${leftBy(space, phase)} outside the published range of a formula`,
  dimension: (phase, space) => leftBy(space, phase),
  compute: (space, phase) => {
    const evaluated = phaseOf(space, phase);
    const leaves = evaluated?.leaves;
    if (evaluated === undefined || leaves === undefined) return undefined;
    const { value, at, outside } = leaves;
    return { value, at, derivation: () => ({ inputs: evaluated.envelope.inputs, formulas: [outside.formula] }) };
  },
});

function leftBy(space: SpaceEvaluation, phase: string | undefined): 'temperature' | 'pressure' {
  return phaseOf(space, phase)?.leaves?.outside.argument === 'pressure' ? 'pressure' : 'temperature';
}

function phaseOf({ phases }: SpaceEvaluation, name: string | undefined): PhaseEvaluation | undefined {
  return phases.find(({ envelope }) => envelope.phase === name);
}
