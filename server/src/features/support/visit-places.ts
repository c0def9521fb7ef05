/** What a place in a visit file speaks of: a reading, a step of the handover, a setting. */
import type { Analysis } from '../../analysis/analysis.ts';
import { remembered } from '../../base/remembered.ts';
import { type TextRange, touches } from '../../base/text-range.ts';
import type { EvaluatedSite } from '../../evaluate/evaluated-site.ts';
import { stepOfKey } from '../../handover/plan.ts';
import { lastRecord, type RecordedStep } from '../../handover/progress.ts';
import { type RecordedSetting, recordedSettings } from '../../handover/recorded-setting.ts';
import type { HandoverStep } from '../../handover/step.ts';
import { type ErrorOfVisit, errorsOfVisit } from '../../handover/visit-errors.ts';
import type { VisitModel } from '../../model/file-models.ts';
import type { Origin } from '../../syntax/nodes.ts';

/** A visit with the site that it went to. */
export interface VisitToSite {
  readonly visit: VisitModel;
  readonly site: EvaluatedSite;
}

/** Undefined for other files, and where the site is not found. */
export function visitIn({ content }: Analysis): VisitToSite | undefined {
  if (content.kind !== 'visit' || content.visited.state !== 'found') return undefined;
  return { visit: content.visit, site: content.visited.site };
}

/** The errors of all readings of a visit file, in the order of its text; none where its site is not found. */
export const errorsIn = remembered((analysis: Analysis): readonly ErrorOfVisit[] => {
  const found = visitIn(analysis);
  if (found === undefined) return [];
  const start = ({ error }: ErrorOfVisit): number => analysis.parsed.rangeOf(error.reading.origin).start;
  return errorsOfVisit(found.site, analysis.file).toSorted((one, other) => start(one) - start(other));
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
export function stepNamed(analysis: Analysis, key: string): StepAt | undefined {
  const found = visitIn(analysis);
  const point = found?.site.points.get(found.visit.steps.get(key)?.located?.value.point?.value ?? '');
  const step = point && stepOfKey(key, point);
  return found && step && { step, last: lastRecord(found.site, step) };
}

/** The setting whose key or value an offset touches. */
export function settingAt(analysis: Analysis, offset: number): RecordedSetting | undefined {
  const { visit, site } = visitIn(analysis) ?? {};
  const settings = (visit?.settings ?? []).flatMap(({ value }) => {
    const point = site?.points.get(value.point?.value ?? '');
    return point === undefined ? [] : recordedSettings(value, point);
  });
  const isAt = (origin: Origin): boolean => touches(analysis.parsed.rangeOf(origin), offset);
  return settings.find(({ located }) => isAt(located.keyOrigin ?? located.origin) || isAt(located.origin));
}
