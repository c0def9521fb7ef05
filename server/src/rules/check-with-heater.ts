import { expectedReading, heatedReading } from '../evaluate/checks/salt-facts.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { isUnread } from '../evaluate/facts/unread.ts';
import { heaterUntold } from '../evaluate/history/heater-untold.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { appendPair } from '../syntax/edit.ts';
import type { FindingDraft, Rule, VisitView } from './rule.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'check-with-heater',
  group: 'Uncertainty and checks',
  severity: 'warning',
  title: 'A heated probe is checked over salts, and nothing says whether its heater works meanwhile.',
  why: 'A heated sensor sees less humidity than the air over the salt has. Whoever adjusts the probe to the salt’s figure then puts it wrong by a fifth or more.',
  mend: 'Switch the heater off for the check and say so; or say that it is on, and compare with what a heated sensor sees.',
  sources: ['Greenspan, J. Res. NBS 81A (1977) 89; OIML R 121:1996', 'IAPWS SR1-86(1992)'],
  facts: [expectedReading, heatedReading],
  fixes: ['choice'],
  check: { point: heatedMeanwhile, visit: readWithoutAWord },
};

function heatedMeanwhile(view: PointEvaluation): readonly FindingDraft[] {
  const { checks } = view.point;
  const { method, heater } = checks?.value ?? {};
  if (checks === undefined || method?.value !== 'saturated-salt' || !view.heater.on) return [];
  if (heater !== undefined || isUnread(checks, 'heater', heater)) return [];
  const plan = view.checkPlan.salts;
  const readings = plan?.salts.flatMap(({ id }) => {
    const [expected, heated] = [view.facts.get(expectedReading(id)), view.facts.get(heatedReading(id))];
    return isKnown(expected) && isKnown(heated) ? [{ id, expected, heated }] : [];
  });
  const first = readings?.[0];
  const numbers =
    first === undefined || plan === undefined
      ? ''
      : `: over ${first.id} at ${showQuantity(plan.at.value.value, 'temperature')} a heated sensor sees ${showFact(first.heated)} instead of ${showFact(first.expected)}`;
  return [
    {
      message: () =>
        `The plan does not say whether the heater works during the salt check${numbers}. Switch it off for the check and say so.`,
      origin: method.origin,
      facts: first === undefined ? [] : [first.expected, first.heated],
      related: () => heaterIsOn(view),
      fixes: () => [
        {
          title: 'Switch the heater off during the check',
          kind: 'choice',
          edits: [appendPair(checks.cursor, 'heater', 'off')],
        },
      ],
    },
  ];
}

function readWithoutAWord({ file, model, visited }: VisitView): readonly FindingDraft[] {
  if (visited.state !== 'found') return [];
  const readings = [...visited.site.points.values()].flatMap((point) =>
    point.readings.filter((reading) => reading.file === file && heaterUntold(reading, point)),
  );
  return readings.map(({ origin, tag }) => {
    const cursor = model.readings.find((reading) => reading.origin === origin)?.cursor;
    const edit = (word: string) => (cursor === undefined ? undefined : appendPair(cursor, 'heater', word));
    return {
      message: () =>
        `The reading over the salt does not say whether the heater of ${tag} worked, and a heated sensor sees less than the salt gives. Write down whether it was off or on.`,
      origin,
      subject: tag,
      fixes: () => [
        { title: 'Write down that the heater was off', kind: 'choice', edits: [edit('off')] },
        { title: 'Write down that the heater was on', kind: 'choice', edits: [edit('on')] },
      ],
    };
  });
}
