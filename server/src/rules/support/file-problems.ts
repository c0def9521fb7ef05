/** What the model could not read, as findings of the rule under which it says so. */
import type { ModelProblemRule } from '../../model/problem.ts';
import type { FileView, FindingDraft } from '../rule.ts';

export function problemsUnder(rule: ModelProblemRule, { problems }: FileView): readonly FindingDraft[] {
  return problems
    .filter((problem) => problem.rule === rule)
    .map(({ origin, sentence, suggestions, related, subject }) => ({
      message: () => `${sentence}.`,
      origin,
      ...(subject === '' ? {} : { subject }),
      related: () => (related === undefined ? [] : [{ message: `${related.sentence}.`, origin: related.origin }]),
      fixes: () => suggestions.map(({ title, kind, edit }) => ({ title, kind, edits: [edit] })),
    }));
}
