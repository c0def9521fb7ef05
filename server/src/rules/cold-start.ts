import { coldStartDewPoint, coldStartHead, coldStartMargin } from '../evaluate/dryness/cold-start.ts';
import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FixDraft, Rule } from './rule.ts';
import { heatContinuously, startsCold, useHeatedModel } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';

export const rule: Rule = {
  name: 'cold-start',
  group: 'Dryness and heater',
  severity: 'warning',
  title: 'The head enters a phase colder than the dew point of that phase, and its heater is not continuous.',
  why: 'A cold probe in warm wet air condenses until it has warmed up, and its sensor stays wet for minutes to hours after that.',
  mend: 'Let the heater work continuously, so that the head is warm when the wet phase begins.',
  leavesAlone: 'Spaces without named phases: nothing says what the head comes from.',
  sources: ['common practice, no source', 'IAPWS SR1-86(1992)'],
  facts: [coldStartMargin, coldStartHead, coldStartDewPoint],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const probe = view.point.humidityProbe;
      const [margin, head, dewPoint] = [coldStartMargin, coldStartHead, coldStartDewPoint].map((key) =>
        view.facts.get(key),
      );
      if (probe === undefined || !view.heater.known || view.heater.mode === 'continuous' || !startsCold(view))
        return [];
      if (!isKnown(margin) || !isKnown(head) || !isKnown(dewPoint)) return [];
      const phase = margin.at?.phase ?? '';
      const mode = view.heater.located?.value.mode;
      return [
        {
          message: () =>
            `The head enters phase ${phase} at ${showFact(head)}, below that phase's highest dew point of ${showFact(dewPoint)}, and condenses until it has warmed up. Keep it warm with a heater that works continuously.`,
          origin: mode?.origin ?? probe.keyOrigin ?? probe.origin,
          facts: [head, dewPoint, margin],
          related: () => worstPhase(view.space, dewPoint),
          fixes: () => heaterContinuous(view),
        },
      ];
    },
  },
};

function heaterContinuous(view: PointEvaluation): readonly FixDraft[] {
  const mode = view.heater.located?.value.mode;
  if (!view.heater.on || mode === undefined) return [...heatContinuously(view), ...useHeatedModel(view)];
  const edits = [replaceScalar(mode.cursor, 'continuous')];
  return [{ title: 'Let the heater work continuously, from before the phase begins', kind: 'choice', edits }];
}
