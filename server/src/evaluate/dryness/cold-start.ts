/**
 * The head as it enters a phase: as cold as the coldest air of the phase before, or of the surroundings before the
 * first. Where that is below the dew point of the phase, it condenses until it has warmed up.
 */
import { valueIfOk } from '../../base/outcome.ts';
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { dewPoint } from '../../physics/air/quantities.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import type { SpaceEvaluation } from '../space.ts';

interface ColdHead {
  readonly celsius: number;
  readonly input: FactInput;
}

interface Entry {
  readonly margin: number;
  readonly facts: readonly Fact[];
}

/** The least margin over all phases, with the head's temperature and the dew point there; none without named phases. */
export function coldStartFacts(space: SpaceEvaluation): readonly Fact[] {
  let head = headFromSurroundings(space);
  let worst: Entry | undefined;
  for (const phase of space.phases) {
    const { phase: name, temperature } = phase.envelope;
    if (name === undefined) return [];
    const entry = head === undefined ? undefined : entryInto(phase, name, head);
    if (entry !== undefined && (worst === undefined || entry.margin < worst.margin)) worst = entry;
    const celsius = temperature.value.low;
    head = { celsius, input: headInput(`from phase ${name}`, celsius, temperature.origin) };
  }
  return worst?.facts ?? [];
}

function headFromSurroundings({ settings }: SpaceEvaluation): ColdHead | undefined {
  const { surroundings } = settings;
  if (surroundings === undefined) return undefined;
  const celsius = surroundings.value.low;
  return { celsius, input: headInput('from the surroundings', celsius, surroundings.origin) };
}

function headInput(from: string, celsius: number, origin: FactInput['origin']): FactInput {
  const label = `head on entry, ${from}`;
  return { label, text: showQuantity(celsius, 'temperature'), ...(origin === undefined ? {} : { origin }) };
}

function entryInto(phase: PhaseEvaluation, name: string, { celsius, input }: ColdHead): Entry | undefined {
  const wettest = worstOverPhases([phase], 'highest', (state) => valueIfOk(dewPoint(state)));
  if (wettest === undefined) return undefined;
  const margin = celsius - wettest.value;
  const fact = (id: string, title: string, value: number, relation: string): Fact => {
    const dimension = id === 'cold-start-margin' ? 'temperature-difference' : 'temperature';
    const formulas = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
    return worstFact({ id, title, dimension, relation, formulas }, { ...wettest, value }, [input]);
  };
  const facts = [
    fact(
      'cold-start-margin',
      'least margin of the cold head to the dew point',
      margin,
      'head on entry − highest dew point of the phase',
    ),
    fact('cold-start-head', `head on entry to phase ${name}`, celsius, 'lowest air temperature before the phase'),
    fact(
      'cold-start-dew-point',
      `highest dew point of phase ${name}`,
      wettest.value,
      'f(td, p) · ew(td) = e, solved for td',
    ),
  ];
  return { margin, facts };
}
