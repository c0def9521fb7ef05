/** Facts of one space: its pressure, what its envelopes are, and what they make of every quantity. */
import { valueIfOk } from '../base/outcome.ts';
import type { Located } from '../model/located.ts';
import type { Space } from '../model/model-types.generated.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantity-names.ts';
import type { Origin } from '../syntax/nodes.ts';
import { phaseEnvelopes } from './air/envelope.ts';
import { overPressureFacts } from './air/over-pressure.ts';
import { evaluatePhase, type PhaseEvaluation } from './air/phase.ts';
import type { ReportPressures } from './air/report-pressures.ts';
import { altitudePressureFacts, type SpacePressure, spacePressure } from './air/space-pressure.ts';
import { worstFact, worstOverPhases } from './air/worst-fact.ts';
import { formulaLeftByQuantity } from './facts/corner.ts';
import type { Fact } from './facts/fact.ts';
import { derivationOf, quantityValue } from './facts/quantity-value.ts';
import type { SiteSettings } from './facts/site-settings.ts';
import { wallFacts } from './mounting/wall-facts.ts';

export interface SpaceEvaluation {
  readonly id: string;
  readonly keyOrigin: Origin;
  readonly located: Located<Space>;
  readonly settings: SiteSettings;
  readonly pressure: SpacePressure;
  readonly phases: readonly PhaseEvaluation[];
  /** True where every envelope can be computed with. */
  readonly complete: boolean;
  /** Facts of the space itself, by id: what its envelopes cannot be, the pressure where it gives none, its wall. */
  readonly facts: ReadonlyMap<string, Fact>;
  readonly quantityFacts: Map<string, Fact>;
}

export function evaluateSpace(
  id: string,
  keyOrigin: Origin,
  located: Located<Space>,
  settings: SiteSettings,
): SpaceEvaluation {
  const space = located.value;
  const pressure = spacePressure(located, settings);
  const computable = pressure.low > 0 && pressure.source !== 'unread';
  const phases = computable ? phaseEnvelopes(space, pressure).map(evaluatePhase) : [];
  const written = space.phases?.value.size ?? (space.air === undefined ? 0 : 1);
  const complete =
    phases.length > 0 && phases.length === written && phases.every((phase) => phase.sampled !== undefined);
  const facts = [
    ...phases.flatMap(phaseFacts),
    ...pressureFacts(pressure, settings),
    ...overPressureFacts(pressure, settings),
    ...(complete ? wallFacts({ located, settings, phases }) : []),
  ];
  return {
    id,
    keyOrigin,
    located,
    settings,
    pressure,
    phases,
    complete,
    facts: new Map(facts.map((fact) => [fact.id, fact])),
    quantityFacts: new Map(),
  };
}

function phaseFacts({ impossible, cut, leaves }: PhaseEvaluation): readonly Fact[] {
  return [
    ...(impossible === undefined ? [] : [impossible.found, impossible.limit]),
    ...(cut === undefined ? [] : [cut.highestDewPoint, cut.lowestTemperature]),
    ...(leaves === undefined ? [] : [leaves.fact]),
  ];
}

function pressureFacts({ source }: SpacePressure, settings: SiteSettings): readonly Fact[] {
  if (source === 'given' || source === 'unread') return [];
  const { computed, rounded } = altitudePressureFacts(settings);
  return [computed, rounded];
}

/** The highest or lowest value that a quantity takes in a space, as a point reports it. */
export function quantityExtreme(
  space: SpaceEvaluation,
  name: QuantityName,
  direction: 'highest' | 'lowest',
  pressures: ReportPressures = {},
): Fact {
  const key = `${name}/${direction}@${pressures.own?.value ?? ''}/${pressures.other?.value ?? ''}`;
  const known = space.quantityFacts.get(key);
  if (known !== undefined) return known;
  const fact = computeExtreme(space, name, direction, pressures);
  space.quantityFacts.set(key, fact);
  return fact;
}

function computeExtreme(
  space: SpaceEvaluation,
  name: QuantityName,
  direction: 'highest' | 'lowest',
  { own, other }: ReportPressures,
): Fact {
  const { title, dimension } = quantityInfo(name);
  const worst = worstOverPhases(space.phases, direction, (state) => {
    const taken = own === undefined ? state : { ...state, pressure: own.value };
    return taken.pressure > taken.vapourPressure ? valueIfOk(quantityValue(name, taken, other?.value)) : undefined;
  });
  const base = { id: `${name}/${direction}`, title: `${direction} ${title}`, dimension, ...derivationOf(name) };
  const inputs = [own, other].flatMap((pressure) => (pressure === undefined ? [] : [pressure.input]));
  return worstFact(base, worst, inputs, (state) => formulaLeftByQuantity(name, state, other?.value));
}
