import { boxFacts } from '../evaluate/air/envelope-facts.ts';
import type { Impossibility } from '../evaluate/air/envelope-limits.ts';
import type { PhaseEvaluation } from '../evaluate/air/phase.ts';
import { lowestPressure, pressureOverVacuum } from '../evaluate/air/pressure-facts.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import { showRange, writeRange } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { inCorner } from './support/words.ts';

/** What an envelope reaches, each before what it may not pass. */
const COMPARED = [
  'highest-humidity',
  'humidity-limit',
  'lowest-depression',
  'depression-limit',
  'highest-dew-point',
  'highest-temperature',
  'highest-vapour-pressure',
  'lowest-pressure',
] as const;

export const rule: Rule = {
  name: 'envelope-impossible',
  group: 'Quantities',
  severity: 'error',
  title:
    'An envelope holds air that cannot be: over 100 %RH, a dew point above the highest temperature, more vapour than pressure, or no pressure at all.',
  why: 'Nothing is computed from such an envelope, so that nothing about its points is checked.',
  mend: 'Clip the humidity to what the hottest air can hold, or correct the temperature or the pressure.',
  leavesAlone:
    'Boxes whose highest dew point lies above the lowest temperature only: they are cut at saturation, and envelope-saturates says so.',
  sources: ['IAPWS SR1-86(1992)', 'Greenspan 1976 in the coefficients of Hardy 1998'],
  facts: [...COMPARED.map((name) => boxFacts[name]), lowestPressure],
  fixes: ['choice'],
  check: {
    space: (space) => [...withoutPressure(space), ...space.phases.flatMap((phase) => impossiblePhase(phase, space))],
  },
};

/** Against the air outside a pressure may be written lower than a vacuum. */
function withoutPressure(space: SpaceEvaluation): readonly FindingDraft[] {
  const { pressure } = space.located.value;
  const lowest = broken(pressureOverVacuum, space)?.fact;
  if (pressure === undefined || space.pressure.source !== 'given' || lowest === undefined) return [];
  return [
    {
      message: () =>
        `The pressure goes down to ${showFact(lowest)}, absolute, and air has a pressure above zero: nothing is computed in this space. Give the absolute pressure, or that against the air outside with (g) behind it.`,
      origin: pressure.origin,
      facts: [lowest],
    },
  ];
}

function impossiblePhase(phase: PhaseEvaluation, { located, facts }: SpaceEvaluation): readonly FindingDraft[] {
  const { impossible, envelope } = phase;
  if (impossible === undefined) return [];
  const { kind } = impossible;
  const [found, limit] = [impossible.found, impossible.limit].map(({ fact }) =>
    facts.get(boxFacts[fact](envelope.phase)),
  );
  if (!isKnown(found) || !isKnown(limit)) return [];
  const { pressure } = located.value;
  const ofPressure = kind === 'vapour-over-pressure' && pressure !== undefined;
  const related = ofPressure
    ? { message: 'The pressure of the space.', origin: pressure.origin }
    : { message: 'The air temperature of the envelope.', origin: envelope.temperature.origin };
  return [
    {
      message: () => words(kind, found, limit),
      origin: envelope.humidity.origin,
      facts: [found, limit],
      related: () => [related],
      fixes: () => clip(phase, impossible),
    },
  ];
}

function words(kind: Impossibility['kind'], found: KnownFact, limit: KnownFact): string {
  const corner = inCorner(found);
  const [reached, bound] = [showFact(found), showFact(limit)];
  switch (kind) {
    case 'humidity-over-saturation':
      return `The humidity reaches ${reached}, and air holds no more than ${bound}${corner}. Give at most ${bound}.`;
    case 'negative-depression':
      return `The dew-point depression goes down to ${reached}, which puts the dew point above the air temperature${corner}. Give at least ${bound}.`;
    case 'dew-point-over-temperature':
      return `The dew point reaches ${reached}, above the highest air temperature of ${bound}${corner}. Give less humidity or hotter air.`;
    case 'vapour-over-pressure':
      return `The vapour pressure would be ${reached}, above the pressure of ${bound}${corner}. Give less humidity or a higher pressure.`;
  }
}

function clip({ envelope }: PhaseEvaluation, { clipped }: Impossibility): readonly FixDraft[] {
  if (clipped === undefined) return [];
  const { low, high } = clipped;
  const { dimension } = envelope.humidity.value;
  const edits = [replaceScalar(envelope.humidity.cursor, writeRange(low, high, dimension))];
  return [{ title: `Clip to what the air can hold, ${showRange(low, high, dimension)}`, kind: 'choice', edits }];
}
