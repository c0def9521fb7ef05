/** What a place in a visit file speaks of: a reading, a step of the handover, a setting. */
import type { Analysis } from '../analysis/analysis.ts';
import { remembered } from '../base/remembered.ts';
import { type TextRange, touches } from '../base/text-range.ts';
import { type HandoverStep, stepOfKey } from '../evaluate/handover-plan.ts';
import { lastRecord, type RecordedStep } from '../evaluate/handover-progress.ts';
import { type RecordedSetting, recordedSettings } from '../evaluate/recorded-setting.ts';
import { type ErrorOfVisit, errorsOfVisit } from '../evaluate/visit-errors.ts';

/** The errors of all readings of a visit file, in the order of its text; none where its site is not found. */
export const errorsIn = remembered(({ content, file, parsed }: Analysis): readonly ErrorOfVisit[] => {
  if (content.kind !== 'visit' || content.visited.state !== 'found') return [];
  const start = ({ error }: ErrorOfVisit): number => parsed.rangeOf(error.reading.origin).start;
  return errorsOfVisit(content.visited.site, file).toSorted((one, other) => start(one) - start(other));
});

export function readingAt(analysis: Analysis, place: TextRange): ErrorOfVisit | undefined {
  return errorsIn(analysis).find(({ error }) => {
    const { start, end } = analysis.parsed.rangeOf(error.reading.origin);
    return start <= place.start && place.end <= end;
  });
}

export interface StepAt {
  readonly step: HandoverStep;
  /** What was said last of it, by any visit. */
  readonly last: RecordedStep | undefined;
}

/** The step of an entry of `steps`, by its key. */
export function stepNamed({ content }: Analysis, key: string): StepAt | undefined {
  if (content.kind !== 'visit' || content.visited.state !== 'found') return undefined;
  const { site } = content.visited;
  const point = site.points.get(content.visit.steps.get(key)?.located?.value.point?.value ?? '');
  const step = point === undefined ? undefined : stepOfKey(key, point);
  return step === undefined ? undefined : { step, last: lastRecord(site, step) };
}

/** The setting whose key or value an offset touches. */
export function settingAt({ content, parsed }: Analysis, offset: number): RecordedSetting | undefined {
  if (content.kind !== 'visit' || content.visited.state !== 'found') return undefined;
  const { site } = content.visited;
  for (const { value } of content.visit.settings) {
    const point = site.points.get(value.point?.value ?? '');
    const found =
      point &&
      recordedSettings(value, point).find(({ located }) =>
        [located.keyOrigin ?? located.origin, located.origin].some((origin) => touches(parsed.rangeOf(origin), offset)),
      );
    if (found !== undefined) return found;
  }
  return undefined;
}
