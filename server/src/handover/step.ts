/** One step of the handover, and the keys by which a visit names it. */
import type { Fact } from '../evaluate/facts/fact.ts';

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

/**
 * The key by which a visit names a step. A name stands for the step of the point that its entry names; keys are unique
 * in YAML, so the same step of a second point has its tag behind the name: `heater-on-K1-MT-101`.
 */
export function stepKeys({ name, subject }: Pick<HandoverStep, 'name' | 'subject'>): readonly [string, string] {
  return [name, `${name}-${subject}`];
}
