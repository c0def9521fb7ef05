/** The handover steps of a point, in the order of work: when each was done, or room to sign it. */
import { keysOfSpace } from '../evaluate/all-facts.ts';
import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { handoverSteps } from '../handover/plan.ts';
import { lastRecord } from '../handover/progress.ts';
import type { HandoverStep } from '../handover/step.ts';
import { type Block, type OwnedFact, paragraph, stated, type Text, table, told, words } from './document.ts';

export function stepBlocks(point: PointEvaluation, site: EvaluatedSite): readonly Block[] {
  const steps = handoverSteps(point);
  if (steps.length === 0) return [paragraph('Too little is given for a plan.')];
  return table(
    'Steps in the order of work',
    ['step', 'what is done', 'what should be seen', 'done, when'],
    steps.map((step, index): readonly Text[] => {
      const { title, todo, expect, facts } = step;
      const owned = facts.map((fact) => ownedBy(point, fact));
      return [
        [told(title)],
        [told(todo, owned), ...cautionText(step, steps.slice(0, index))],
        [told(expect, owned)],
        doneText(step, site),
      ];
    }),
  );
}

/** In full where it first stands, so that nobody skips one that is new. */
function cautionText({ caution }: HandoverStep, before: readonly HandoverStep[]): Text {
  if (caution === undefined) return [];
  const isKnown = before.some((step) => step.caution === caution);
  return isKnown ? [' The caution above holds here too.'] : [' Caution: ', told(caution)];
}

/** As the visits say it, with what was noted. */
function doneText(step: HandoverStep, site: EvaluatedSite): Text {
  const record = lastRecord(site, step);
  if (record?.done !== true) return ['☐'];
  const note = record.entry.located?.value.note;
  return ['☑ ', words(record.date), ...(note === undefined ? [] : [': ', ...stated(note)])];
}

/** A step at a point may name a number of its space. */
function ownedBy({ tag, space }: PointEvaluation, fact: Fact): OwnedFact {
  const isOfSpace = space !== undefined && keysOfSpace(space).some(({ id }) => id === fact.id);
  return { subject: isOfSpace ? space.id : tag, fact };
}
