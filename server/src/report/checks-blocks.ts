/** How a point is checked: the plan, and the readings to expect over each salt. */
import { timeToCheck } from '../evaluate/checks/due.ts';
import { expectedReading, heatedReading, saltUncertainty } from '../evaluate/checks/salt-facts.ts';
import { timeToProposedCheck } from '../evaluate/history/facts.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import {
  type Block,
  factText,
  listed,
  nameTable,
  paragraph,
  stated,
  statedWord,
  type Text,
  table,
  told,
  words,
} from './document.ts';

export function checkBlocks(view: PointEvaluation): readonly Block[] {
  return [...planTable(view), ...saltTable(view)];
}

function planTable({ tag, point, facts, checkPlan }: PointEvaluation): readonly Block[] {
  const checks = point.checks?.value;
  if (checks === undefined) return [paragraph('No check is planned.')];
  const due = checkPlan.due?.due;
  const proposed = facts.get(timeToProposedCheck);
  return nameTable('Checks', [
    ['Interval', stated(checks.interval)],
    ['Method', listed(statedWord(checks.method), ...(checks.salts?.value ?? []).map((salt) => stated(salt)))],
    ['At', stated(checks.at)],
    ['Heater during the check', stated(checks.heater)],
    ['Last check', stated(checks.last)],
    ['Next check', due === undefined ? [] : [words(due)]],
    ['Time left', factText(tag, facts.get(timeToCheck))],
    ['Proposed check', proposed === undefined ? [] : [told(proposed.title), ': ', ...factText(tag, proposed)]],
  ]);
}

function saltTable({ tag, facts, checkPlan }: PointEvaluation): readonly Block[] {
  const salts = checkPlan.salts?.salts ?? [];
  return table(
    'Readings to expect over salts',
    ['salt', 'reading', 'uncertain by', 'with the heater on'],
    salts.map(({ id }): readonly Text[] => [
      [words(id)],
      factText(tag, facts.get(expectedReading(id))),
      factText(tag, facts.get(saltUncertainty(id))),
      factText(tag, facts.get(heatedReading(id))),
    ]),
  );
}
