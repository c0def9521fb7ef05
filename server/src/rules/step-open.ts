import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import { lastRecord, openSteps, type RecordedStep, recordedSteps } from '../handover/progress.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, Rule, VisitView } from './rule.ts';

export const rule: Rule = {
  name: 'step-open',
  group: 'Visits',
  severity: 'information',
  title: 'A step of the handover of a point is not done.',
  why: 'A point that was never proven is relied on all the same: the span that was not read back, the alarm that nobody heard.',
  mend: 'Do the step and write it down as done, with its day in the visit that it was done on.',
  leavesAlone: 'Points of whose handover no visit speaks, and steps that a later visit says are done.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    visit: (view) =>
      view.visited.state === 'found'
        ? [...saidToBeOpen(view, view.visited.site), ...notSpokenOf(view, view.visited.site)]
        : [],
  },
};

function saidToBeOpen({ file }: VisitView, site: EvaluatedSite): readonly FindingDraft[] {
  return recordedSteps(site).flatMap((record) => {
    const { step, tag, entry, done } = record;
    if (record.file !== file || done || lastRecord(site, step) !== record) return [];
    const given = entry.located?.value.done;
    return {
      message: () => `“${step.title}” is still open. ${step.todo} Expected: ${step.expect}`,
      origin: given?.origin ?? entry.keyOrigin,
      subject: tag,
      facts: step.facts,
      fixes: () =>
        given === undefined
          ? []
          : [
              {
                title: 'Write down that it is done',
                kind: 'choice',
                edits: [replaceScalar(given.cursor, 'true')],
              },
            ],
    };
  });
}

/** One sentence names no more steps than can be kept in mind. */
const MOST_NAMED = 3;

/** Told once for a point, where its handover was last spoken of. */
function notSpokenOf({ file }: VisitView, site: EvaluatedSite): readonly FindingDraft[] {
  return lastRecords(site).flatMap(({ tag, entry, file: toldIn }) => {
    const steps = openSteps(site, tag).filter((step) => lastRecord(site, step) === undefined);
    if (toldIn !== file || steps.length === 0) return [];
    const named = steps.slice(0, MOST_NAMED).map(({ name }) => name);
    const more = steps.length - named.length;
    const [noun, verb] = steps.length === 1 ? ['step', 'is'] : ['steps', 'are'];
    return {
      message: () =>
        `${steps.length} ${noun} of the handover of this point ${verb} not written down in any visit: ${named.join(', ')}${more === 0 ? '' : ` and ${more} more`}. Do what is still to be done, and write it down.`,
      origin: entry.keyOrigin,
      subject: tag,
    };
  });
}

/** Of each point the step that was written down last. */
function lastRecords(site: EvaluatedSite): readonly RecordedStep[] {
  return [...new Map(recordedSteps(site).map((record) => [record.tag, record])).values()];
}
