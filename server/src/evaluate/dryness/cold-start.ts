/**
 * The head as it enters a phase: as cold as the coldest air of the phase before, or of the surroundings before the
 * first. Where that is below the dew point of the phase, it condenses until it has warmed up.
 */
import { valueIfOk } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { dewPoint } from '../../physics/air/quantities.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { type WorstState, worstFact, worstOverPhases } from '../air/worst-fact.ts';
import type { Computed } from '../facts/declared-fact.ts';
import type { FactInput } from '../facts/fact.ts';
import { lazyInput } from '../facts/inputs.ts';
import { pointFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { whereProbeIsInAir } from './dryness.ts';

/** The least over all phases. */
export const coldStartMargin = pointFact('cold-start-margin', {
  title: 'least margin of the cold head to the dew point',
  dimension: 'temperature-difference',
  compute: atWorstEntry(({ margin, ...entry }) =>
    entryFact(entry, margin, 'head on entry − highest dew point of the phase'),
  ),
});

export const coldStartHead = pointFact('cold-start-head', {
  title: (point) => `head on entry to phase ${phaseEntered(point)}`,
  dimension: 'temperature',
  compute: atWorstEntry((entry) => entryFact(entry, entry.head.celsius, 'lowest air temperature before the phase')),
});

export const coldStartDewPoint = pointFact('cold-start-dew-point', {
  title: (point) => `highest dew point of phase ${phaseEntered(point)}`,
  dimension: 'temperature',
  compute: atWorstEntry((entry) => entryFact(entry, entry.wettest.value, 'f(td, p) · ew(td) = e, solved for td')),
});

interface ColdHead {
  readonly celsius: number;
  readonly input: FactInput;
}

interface Entry {
  readonly phase: string;
  readonly head: ColdHead;
  /** Where the dew point of the phase is highest. */
  readonly wettest: WorstState;
  /** Of the head above that dew point, K. */
  readonly margin: number;
}

function atWorstEntry(compute: (entry: Entry) => Computed) {
  return whereProbeIsInAir((_, space) => {
    const entry = worstEntry(space);
    return entry === undefined ? undefined : compute(entry);
  });
}

function entryFact({ wettest, head }: Pick<Entry, 'wettest' | 'head'>, value: number, relation: string): Computed {
  const formulas = [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER];
  return worstFact({ relation, formulas }, { ...wettest, value }, () => [head.input]);
}

function phaseEntered({ space }: ResolvedPoint): string {
  return (space === undefined ? undefined : worstEntry(space)?.phase) ?? '';
}

/** None in a space without named phases: nothing says what the head comes from. */
const worstEntry = remembered((space: SpaceEvaluation): Entry | undefined => {
  let head = headFromSurroundings(space);
  let worst: Entry | undefined;
  for (const phase of space.phases) {
    const { phase: name, temperature } = phase.envelope;
    if (name === undefined) return undefined;
    const entry = head === undefined ? undefined : entryInto(phase, name, head);
    if (entry !== undefined && (worst === undefined || entry.margin < worst.margin)) worst = entry;
    const celsius = temperature.value.low;
    head = { celsius, input: headInput(`from phase ${name}`, celsius, temperature.origin) };
  }
  return worst;
});

function headFromSurroundings({ settings }: SpaceEvaluation): ColdHead | undefined {
  const { surroundings } = settings;
  if (surroundings === undefined) return undefined;
  const celsius = surroundings.value.low;
  return { celsius, input: headInput('from the surroundings', celsius, surroundings.origin) };
}

function headInput(from: string, celsius: number, origin: FactInput['origin']): FactInput {
  const text = () => showQuantity(celsius, 'temperature');
  return lazyInput(`head on entry, ${from}`, text, origin === undefined ? {} : { origin });
}

function entryInto(phase: PhaseEvaluation, name: string, head: ColdHead): Entry | undefined {
  const wettest = worstOverPhases([phase], 'highest', (state) => valueIfOk(dewPoint(state)));
  return wettest === undefined ? undefined : { phase: name, head, wettest, margin: head.celsius - wettest.value };
}
