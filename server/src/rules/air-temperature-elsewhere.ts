import { areNeverEquallyWarm, highest as highestIn, lowest as lowestIn } from '../evaluate/air/quantity-range.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { Rule } from './rule.ts';
import { addAirTemperatureProbe, assignOwnProbe } from './support/air-temperature-fixes.ts';

export const rule: Rule = {
  name: 'air-temperature-elsewhere',
  group: 'Quantities',
  severity: 'warning',
  title:
    'A report takes its air temperature from a point in another space; an error where the two are never equally warm.',
  why: 'The two spaces are at different temperatures sooner or later, and the report is then computed for air that is not there.',
  mend: 'Assign a probe in the same space.',
  leavesAlone:
    'Points that are not there: reference-unknown speaks of those. Points without an air-temperature probe: air-temperature-missing does.',
  sources: ['common practice, no source'],
  facts: [lowestIn('air-temperature'), highestIn('air-temperature')],
  fixes: ['choice'],
  check: {
    point: (view) =>
      view.reports.flatMap((evaluated) => {
        const { quantity, report, source } = evaluated;
        const { space } = view;
        if (source.kind !== 'other-point' || space === undefined) return [];
        const { tag, entry, space: elsewhere } = source.other;
        if (entry === undefined || elsewhere === undefined || elsewhere.id === space.id) return [];
        const [here, there] = [temperaturesOf(space), temperaturesOf(elsewhere)];
        const apart = areNeverEquallyWarm(space, elsewhere);
        return {
          message: () =>
            `The ${quantityInfo(quantity).title} takes its air temperature from ${tag} in ${elsewhere.id}${words(there)}, and this point is in ${space.id}${words(here)}: the two ${apart ? 'are never' : 'need not be'} equally warm. Assign a probe in the same space.`,
          origin: report.value.airTemperature?.origin ?? report.origin,
          severity: apart ? 'error' : 'warning',
          facts: [here, there].flatMap((range) => (range === undefined ? [] : [range.lowest, range.highest])),
          related: () => [{ message: `${tag} is in ${elsewhere.id}.`, origin: entry.keyOrigin }],
          fixes: () => [...assignOwnProbe(view, report, 'choice'), ...addAirTemperatureProbe(view, evaluated)],
        };
      }),
  },
};

interface Temperatures {
  readonly lowest: KnownFact;
  readonly highest: KnownFact;
}

function temperaturesOf(space: SpaceEvaluation): Temperatures | undefined {
  const lowest = space.facts.get(lowestIn('air-temperature'));
  const highest = space.facts.get(highestIn('air-temperature'));
  return isKnown(lowest) && isKnown(highest) ? { lowest, highest } : undefined;
}

function words(range: Temperatures | undefined): string {
  return range === undefined ? '' : `, at ${showFact(range.lowest)} to ${showFact(range.highest)}`;
}
