/** One space: its pressure, its envelopes, and the facts that are asked of it. */
import type { Located } from '../../model/located.ts';
import type { Space } from '../../model/model-types.generated.ts';
import type { Origin } from '../../syntax/nodes.ts';
import type { Facts } from '../facts/declared-fact.ts';
import { rememberedFacts } from '../facts/remembered-facts.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { phaseEnvelopes } from './envelope.ts';
import { evaluatePhase, type PhaseEvaluation } from './phase.ts';
import { type SpacePressure, spacePressure } from './space-pressure.ts';

export interface SpaceEvaluation {
  readonly id: string;
  readonly keyOrigin: Origin;
  readonly located: Located<Space>;
  readonly settings: SiteSettings;
  readonly pressure: SpacePressure;
  readonly phases: readonly PhaseEvaluation[];
  /** True where every envelope can be computed with. */
  readonly complete: boolean;
  readonly facts: Facts<SpaceEvaluation>;
}

export function evaluateSpace(
  id: string,
  keyOrigin: Origin,
  located: Located<Space>,
  settings: SiteSettings,
): SpaceEvaluation {
  const { phases: named, air } = located.value;
  const pressure = spacePressure(located, settings);
  const computable = pressure.low > 0 && pressure.source !== 'unread';
  const phases = computable ? phaseEnvelopes(located.value, pressure).map(evaluatePhase) : [];
  const written = named?.value.size ?? (air === undefined ? 0 : 1);
  const complete =
    phases.length > 0 && phases.length === written && phases.every((phase) => phase.sampled !== undefined);
  return withFacts({ id, keyOrigin, located, settings, pressure, phases, complete });
}

/** The space as it would be with one phase alone. */
export function inOnePhase(space: SpaceEvaluation, phase: PhaseEvaluation): SpaceEvaluation {
  return withFacts({ ...space, phases: [phase], complete: phase.sampled !== undefined });
}

function withFacts(fields: Omit<SpaceEvaluation, 'facts'>): SpaceEvaluation {
  const space: SpaceEvaluation = { ...fields, facts: rememberedFacts(() => space) };
  return space;
}
