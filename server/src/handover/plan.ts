/** The handover plan: what is done at each point until it may be relied on, in the order of work, and what is seen then. */
import { remembered } from '../base/remembered.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { checkBeforeFitting, firstComparison } from './comparisons.ts';
import { fittingSteps, hazardStep } from './fitting.ts';
import { heaterSteps } from './heater.ts';
import { alarmSteps, signalSteps } from './signals.ts';

export interface HandoverStep {
  /** In kebab-case and unique within one point; a key of `steps` in a visit file. */
  readonly name: string;
  readonly title: string;
  /** The tag of the point. */
  readonly subject: string;
  readonly todo: string;
  /** What should be seen, with its numbers. */
  readonly expect: string;
  /** The facts whose numbers it names. */
  readonly facts: readonly Fact[];
  /** Of the hazards of the space that this step touches, and who decides. */
  readonly caution?: string;
}

/** A step before its point is written to it. */
export type StepDraft = Omit<HandoverStep, 'subject'>;

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

/**
 * The key by which a visit names a step. A name stands for the step of the point that its entry names; keys are unique
 * in YAML, so the same step of a second point has its tag behind the name: `heater-on-K1-MT-101`.
 */
export function stepKeys({ name, subject }: Pick<HandoverStep, 'name' | 'subject'>): readonly [string, string] {
  return [name, `${name}-${subject}`];
}

/** The step of a point that a key of a visit stands for. */
export function stepOfKey(key: string, point: PointEvaluation): HandoverStep | undefined {
  const wanted = key.toLowerCase();
  return handoverSteps(point).find((step) => stepKeys(step).some((known) => known.toLowerCase() === wanted));
}
