import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { lowestReported } from '../evaluate/resolved/report-range.ts';
import { alarmFrostPoint, limitsBelowZero, signalFrostPoint } from '../evaluate/signals/frost-point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { renameKey, replaceScalar } from '../syntax/edit.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { FixDraft, Rule, RuleEdit } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'dew-or-frost',
  group: 'Quantities',
  severity: 'warning',
  title: 'A dew point goes below 0 °C, where dew point (over water) and frost point (over ice) differ.',
  why: 'Below 0 °C the two differ by up to about 10 % of the value below zero, and instruments and people call either of them dew point. Whoever compares two readings has to know which they are.',
  mend: 'Report the frost point where ice is meant. Where the dew point over supercooled water is meant, report both or accept the finding with that reason.',
  leavesAlone:
    'Points that report the frost point beside the dew point. It is one finding for each point: at the report, else at the first signal or alarm.',
  sources: ['WMO-No. 8, Guide to Instruments and Methods of Observation, ch. 4'],
  facts: [lowestReported('dew-point'), lowestReported('frost-point'), signalFrostPoint, alarmFrostPoint],
  fixes: ['choice'],
  check: {
    point: (view) => {
      if (view.reports.some(({ quantity }) => quantity === 'frost-point')) return [];
      const [first, ...others] = [...reportPlaces(view), ...limitPlaces(view)];
      if (first === undefined) return [];
      return [
        {
          message: () => `${first.words}. Say frost-point where that is meant.`,
          origin: first.origin,
          facts: first.facts,
          related: () => [
            ...first.facts.slice(0, 1).flatMap((fact) => worstPhase(view.space, fact)),
            ...others.map(({ words, origin }) => ({ message: `${words}.`, origin })),
          ],
          fixes: () => sayFrostPoint(view),
        },
      ];
    },
  },
};

interface Place {
  readonly words: string;
  readonly origin: Origin;
  readonly facts: readonly KnownFact[];
}

function reportPlaces({ point, facts }: PointEvaluation): readonly Place[] {
  const report = point.reports?.value.get('dew-point');
  const dewPoint = facts.get(lowestReported('dew-point'));
  const frostPoint = facts.get(lowestReported('frost-point'));
  if (report === undefined || !isKnown(dewPoint) || !isKnown(frostPoint)) return [];
  const words = `The dew point goes down to ${showFact(dewPoint)}${atCorner(dewPoint)}, which over ice is a frost point of ${showFact(frostPoint)}`;
  return [{ words, origin: report.keyOrigin ?? report.origin, facts: [dewPoint, frostPoint] }];
}

function limitPlaces(view: PointEvaluation): readonly Place[] {
  return limitsBelowZero(view).flatMap(({ name, kind, celsius, origin }) => {
    const frostPoint = view.facts.get((kind === 'signal' ? signalFrostPoint : alarmFrostPoint)(name));
    if (!isKnown(frostPoint)) return [];
    const what = kind === 'signal' ? `The span of ${name} starts at` : `The limit of ${name} is`;
    const words = `${what} ${showQuantity(celsius, 'temperature')} dew point, which over ice is a frost point of ${showFact(frostPoint)}`;
    return [{ words, origin, facts: [frostPoint] }];
  });
}

/** Renames the report and what refers to it, where the air has a frost point at all. */
function sayFrostPoint({ point, facts }: PointEvaluation): readonly FixDraft[] {
  const { reports } = point;
  if (!isKnown(facts.get(lowestReported('frost-point')))) return [];
  const edits: (RuleEdit | undefined)[] = [];
  if (reports?.value.has('dew-point') === true) {
    const { node, part, via } = reports.cursor;
    const pair =
      node.kind === 'map' && via === undefined ? node.pairs.find(({ key }) => key.text === 'dew-point') : undefined;
    edits.push(pair === undefined ? undefined : renameKey(part, pair, 'frost-point'));
  }
  for (const { value } of [...(point.signals?.value.values() ?? []), ...(point.alarms?.value.values() ?? [])]) {
    if (value.quantity?.value === 'dew-point') edits.push(replaceScalar(value.quantity.cursor, 'frost-point'));
  }
  return [{ title: 'Say frost point instead: over ice, and without a value above 0 °C', kind: 'choice', edits }];
}
