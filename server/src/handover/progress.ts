/** How far the handover of a site has come: which steps its visits say are done. */
import { remembered } from '../base/remembered.ts';
import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import { dateOf } from '../evaluate/resolved/visit-reading.ts';
import type { Step } from '../model/model-types.generated.ts';
import type { Entry } from '../model/read-file.ts';
import { handoverSteps, stepOfKey } from './plan.ts';
import type { HandoverStep } from './step.ts';

/** What a visit says of one step of one point. */
export interface RecordedStep {
  /** URI of the visit file. */
  readonly file: string;
  readonly date: string;
  readonly entry: Entry<Step>;
  readonly tag: string;
  readonly step: HandoverStep;
  readonly done: boolean;
}

/** Every step that visits speak of, the oldest first. Entries of points and steps that are not there are left out. */
export const recordedSteps = remembered(({ visits, points }: EvaluatedSite): readonly RecordedStep[] => {
  const recorded = visits.flatMap(({ file, model }) => {
    const date = dateOf(model);
    return [...model.steps.values()].flatMap((entry): readonly RecordedStep[] => {
      const { point: named, done } = entry.located?.value ?? {};
      const point = points.get(named?.value ?? '');
      const step = point === undefined ? undefined : stepOfKey(entry.name, point);
      if (point === undefined || step === undefined || done === undefined) return [];
      return [{ file, date, entry, tag: point.tag, step, done: done.value }];
    });
  });
  return recorded.toSorted((one, other) => one.date.localeCompare(other.date));
});

/** What was said last of a step; undefined where no visit speaks of it. */
export function lastRecord(site: EvaluatedSite, step: HandoverStep): RecordedStep | undefined {
  return lastByStep(site).get(wordOf(step));
}

const lastByStep = remembered(
  (site: EvaluatedSite) => new Map(recordedSteps(site).map((record) => [wordOf(record.step), record])),
);

function wordOf({ name, subject }: HandoverStep): string {
  return `${name} ${subject}`;
}

/** The steps of a point that no visit says are done, in the order of work. */
export function openSteps(site: EvaluatedSite, tag: string): readonly HandoverStep[] {
  const point = site.points.get(tag);
  if (point === undefined) return [];
  return handoverSteps(point).filter((step) => lastRecord(site, step)?.done !== true);
}
