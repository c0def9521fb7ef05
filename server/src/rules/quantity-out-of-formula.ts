import { outsideFormula } from '../evaluate/air/envelope-facts.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { wordsOfOutside } from '../evaluate/facts/corner.ts';
import { isKnown } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'quantity-out-of-formula',
  group: 'Quantities',
  severity: 'information',
  title: 'A computation leaves the range that its formula was published for.',
  why: 'Beyond its published range a formula is only continued. The numbers are still sensible, but nobody has measured there for it.',
  mend: 'Nothing needs mending where such air is meant. Take the numbers as less certain.',
  sources: ['The range of each formula is cited with it'],
  facts: [outsideFormula, lowestReported, highestReported],
  fixes: [],
  check: { space: inEnvelope, point: inReports },
};

function inEnvelope({ phases, facts }: SpaceEvaluation): readonly FindingDraft[] {
  const left = phases.flatMap(({ leaves, sampled, envelope }) =>
    leaves === undefined ? [] : [{ ...leaves, envelope, computed: sampled !== undefined }],
  );
  const firstByPressure = left.find(({ outside }) => outside.argument === 'pressure');
  return left
    .filter((one) => one.outside.argument !== 'pressure' || one === firstByPressure)
    .flatMap(({ outside, envelope, computed }) => {
      const fact = facts.get(outsideFormula(envelope.phase));
      if (!isKnown(fact)) return [];
      return [
        {
          message: () =>
            `${wordsOfOutside(outside)}${inCorner(fact)}. ${computed ? CONTINUED : 'Nothing is computed from this envelope.'}`,
          origin: envelope.keyOrigin,
          facts: [fact],
        },
      ];
    });
}

const CONTINUED = 'What is computed there continues the formula, and is less certain.';

/** What the envelope does not leave by itself: a dew point below −50 °C, for example. */
function inReports({ reports, facts, space }: PointEvaluation): readonly FindingDraft[] {
  const known = new Set(space?.phases.map(({ leaves }) => leaves?.outside.formula.id));
  return reports.flatMap(({ quantity, report }): FindingDraft[] => {
    const left = [facts.get(lowestReported(quantity)), facts.get(highestReported(quantity))].find(
      (fact) => fact?.outside !== undefined,
    );
    const outside = left?.outside;
    if (!isKnown(left) || outside === undefined || known.has(outside.formula.id)) return [];
    return [
      {
        message: () =>
          `The ${quantityInfo(quantity).title} leaves the range of its formula${inCorner(left)}: ${wordsOfOutside(outside)}. ${CONTINUED}`,
        origin: report.keyOrigin ?? report.origin,
        facts: [left],
      },
    ];
  });
}
