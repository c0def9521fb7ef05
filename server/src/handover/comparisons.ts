/** Steps of the handover that compare a point with a reference: before it is fitted, and in the running process. */

import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { expectedReading, saltUncertainty } from '../evaluate/checks/salt-facts.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { StepDraft } from './step.ts';
import { cautionOf } from './step-cautions.ts';

/** By the method of the plan: whoever checks the point later then compares like with like. */
export function checkBeforeFitting(view: PointEvaluation): readonly StepDraft[] {
  const { point, heater, checkPlan } = view;
  const method = point.checks?.value.method?.value;
  if (point.humidityProbe === undefined || method === undefined) return [];
  const base = { name: 'check-before-fitting', title: 'Check before fitting' };
  const cold = heater.on ? 'with its heater off and its head cold' : 'with its head at the temperature of the air';
  if (method !== 'saturated-salt') {
    const where = method === 'laboratory' ? 'in the laboratory' : 'beside the reference instrument, in the same air';
    return [
      {
        ...base,
        todo: `Before it is fitted, read the humidity probe ${where}, ${cold}.`,
        expect:
          'The two differ by no more than the root of the sum of the squares of their uncertainties (En up to 1).',
        facts: [],
      },
    ];
  }
  const readings = (checkPlan.salts?.salts ?? []).flatMap(({ id }) => {
    const [expected, uncertainty] = [view.facts.get(expectedReading(id)), view.facts.get(saltUncertainty(id))];
    return isKnown(expected) && isKnown(uncertainty) ? [{ id, expected, uncertainty }] : [];
  });
  const [salts, at] = [readings.map(({ id }) => id).join(' and '), checkPlan.salts?.at];
  if (at === undefined || readings.length === 0) return [];
  const over = readings.map(
    ({ id, expected, uncertainty }) => `${showFact(expected)} ± ${showFact(uncertainty)} over ${id}`,
  );
  return [
    {
      ...base,
      todo: `Before it is fitted, hold the humidity probe over ${salts} at ${showQuantity(at.value.value, 'temperature')}, ${cold}, until the reading stands.`,
      expect: `It reads ${over.join(' and ')}, besides the uncertainty of the probe itself.`,
      facts: readings.flatMap(({ expected, uncertainty }) => [expected, uncertainty]),
    },
  ];
}

export function firstComparison(view: PointEvaluation): readonly StepDraft[] {
  const uncertainties = view.reports.flatMap(({ quantity }) => {
    const fact = view.facts.get(expandedUncertainty(quantity));
    return isKnown(fact) ? [{ quantity, fact }] : [];
  });
  if (uncertainties.length === 0) return [];
  const own = uncertainties.map(({ quantity, fact }) => `${showFact(fact)} for the ${quantityInfo(quantity).title}`);
  return [
    {
      name: 'first-comparison',
      title: 'First comparison at work',
      todo: 'With the process running steadily, read every quantity beside a reference in the same air, and write down both with the uncertainty of the reference.',
      expect: `The two differ by no more than the root of the sum of the squares of their uncertainties (En up to 1); those of the point are at most ${own.join(', ')}.`,
      facts: uncertainties.map(({ fact }) => fact),
      ...cautionOf(view, 'fitting'),
    },
  ];
}
