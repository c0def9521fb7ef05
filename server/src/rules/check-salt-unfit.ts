import { expectedReading } from '../evaluate/checks/salt-facts.ts';
import type { PlannedSalt, SaltPlan } from '../evaluate/checks/salts.ts';
import { humidityAtSensor, lowestHumidityAtSensor } from '../evaluate/dryness/dryness.ts';
import { wordsOfOutside } from '../evaluate/facts/corner.ts';
import { isKnown, type KnownFact, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { Located } from '../model/located.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'check-salt-unfit',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title:
    'The salts of a check do not span what the sensor sees, are not valid at its temperature, or do not go with the space.',
  why: 'A sensor that reads right over one salt may read wrong far from it. Over two salts, one below and one above what it sees at work, both its offset and its slope show.',
  mend: 'Choose salts on either side of the humidity that the sensor sees at work, heated as it is then.',
  leavesAlone: 'Salts within 15 %RH of the ends of the working humidity.',
  sources: [
    'Greenspan, J. Res. NBS 81A (1977) 89; OIML R 121:1996',
    '15 %RH, and what does not go together: common practice, no source',
  ],
  facts: [lowestHumidityAtSensor, humidityAtSensor, expectedReading],
  fixes: ['choice'],
  check: { point: unfit },
};

function unfit(view: PointEvaluation): readonly FindingDraft[] {
  const plan = view.checkPlan.salts;
  const salts = view.point.checks?.value.salts;
  if (plan === undefined || salts === undefined) return [];
  const ofSalts = plan.salts.flatMap((salt) => [...invalid(salt, plan, salts), ...conflicting(salt, plan, salts)]);
  return ofSalts.length > 0 ? ofSalts : notSpanning(view, plan, salts);
}

type Salts = Located<readonly Located<string>[]>;

function invalid({ id, humidity, located }: PlannedSalt, plan: SaltPlan, salts: Salts): readonly FindingDraft[] {
  if (humidity.ok) return [];
  return [
    {
      message: () =>
        `${id} is no fixed point at ${showQuantity(plan.at.value.value, 'temperature')}: ${wordsOfOutside(humidity.problem)}. Check at another temperature, or over another salt.`,
      origin: located.origin,
      related: () => [{ message: 'The temperature of the check is here.', origin: plan.at.origin }],
      fixes: () => fittingSalts(plan, salts),
    },
  ];
}

function conflicting({ id, conflict, located }: PlannedSalt, plan: SaltPlan, salts: Salts): readonly FindingDraft[] {
  if (conflict === undefined) return [];
  return [
    {
      message: () =>
        `${id} is no salt for a probe that is exposed to ${conflict.exposure}: ${conflict.reason}. Use another salt.`,
      origin: located.origin,
      fixes: () => fittingSalts(plan, salts),
    },
  ];
}

function notSpanning({ facts }: PointEvaluation, plan: SaltPlan, salts: Salts): readonly FindingDraft[] {
  const { leaves } = plan;
  if (leaves === undefined || leaves === 'neither' || plan.working === undefined) return [];
  const [lowest, highest] = plan.working;
  const readings = plan.salts
    .map(({ id }) => facts.get(expectedReading(id)))
    .filter(isKnown)
    .toSorted((one, other) => one.value - other.value);
  const [driest, wettest] = [readings[0], readings.at(-1)];
  if (driest === undefined || wettest === undefined) return [];
  const end = leaves === 'wet' ? highest : lowest;
  return [
    {
      message: () =>
        `At work the sensor sees ${showFact(lowest)} to ${showFact(highest)}${inCorner(end)}, and the salts give ${saltWords(driest, wettest)} at ${showQuantity(plan.at.value.value, 'temperature')}: they say nothing of the ${leaves} end. Choose salts on either side.`,
      origin: salts.origin,
      facts: [lowest, highest, ...readings],
      fixes: () => fittingSalts(plan, salts),
    },
  ];
}

function saltWords(driest: KnownFact, wettest: KnownFact): string {
  return driest === wettest ? showFact(driest) : `${showFact(driest)} to ${showFact(wettest)}`;
}

function fittingSalts({ fitting }: SaltPlan, { cursor, value }: Salts): readonly FixDraft[] {
  const { part, node, via } = cursor;
  const already = value.map((salt) => salt.value);
  if (fitting.every((id) => already.includes(id)) || via !== undefined || node.kind !== 'list' || !node.flow) return [];
  const newText = `[${fitting.join(', ')}]`;
  return [
    {
      title: `Check over ${fitting.join(' and ')}`,
      kind: 'choice',
      edits: [{ part, start: node.start, end: node.end, newText }],
    },
  ];
}
