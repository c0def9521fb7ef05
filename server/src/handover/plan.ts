/** The handover plan: what is done at each point until it may be relied on, in the order of work, and what is seen then. */
import { remembered } from '../base/remembered.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { checkBeforeFitting, firstComparison } from './comparisons.ts';
import { fittingSteps, hazardStep } from './fitting.ts';
import { heaterSteps } from './heater.ts';
import { alarmSteps, signalSteps } from './signals.ts';
import { type HandoverStep, type StepDraft, stepKeys } from './step.ts';

/** The steps of all points, point by point. Of what the site file does not have there is no step. */
export function handoverPlan(points: Iterable<PointEvaluation>): readonly HandoverStep[] {
  return [...points].flatMap(handoverSteps);
}

/** The steps of one point. */
export const handoverSteps = remembered((point: PointEvaluation): readonly HandoverStep[] => {
  if (point.entry.broken || point.entry.located === undefined) return [];
  const drafts: readonly StepDraft[] = [
    ...hazardStep(point),
    ...checkBeforeFitting(point),
    ...fittingSteps(point),
    ...heaterSteps(point),
    ...signalSteps(point),
    ...alarmSteps(point),
    ...firstComparison(point),
  ];
  return drafts.map((draft) => ({ ...draft, subject: point.tag }));
});

/** The step of a point that a key of a visit stands for. */
export function stepOfKey(key: string, point: PointEvaluation): HandoverStep | undefined {
  const wanted = key.toLowerCase();
  return handoverSteps(point).find((step) => stepKeys(step).some((known) => known.toLowerCase() === wanted));
}
