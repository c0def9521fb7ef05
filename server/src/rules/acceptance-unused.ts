import { nearestWord } from '../base/nearest.ts';
import type { AcceptanceView, FindingDraft, IdleAcceptance, Rule } from './rule.ts';
import { changeAcceptedRule, removeAcceptance } from './support/acceptance-edit.ts';

export const rule: Rule = {
  name: 'acceptance-unused',
  group: 'Housekeeping',
  severity: 'warning',
  title: 'A comment accepts a finding that is not there.',
  why: 'An acceptance that has lost its finding waits for the next one: it would be accepted with a reason that was given for something else.',
  mend: 'Remove the comment. Where a finding is there, put the comment on its line or alone on the line above, with the name of its rule.',
  leavesAlone:
    'Files that cannot be read in full, and files whose kits cannot: the finding may come back with what is missing.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['choice'],
  check: {
    acceptances: (view) =>
      view.whole ? view.idle.filter(({ reason }) => reason !== '').map((idle) => unused(idle, view)) : [],
  },
};

function unused(idle: IdleAcceptance, { ruleNames }: AcceptanceView): FindingDraft {
  const { rule: name, origin, subject } = idle;
  const isRule = ruleNames.includes(name);
  const near = isRule ? undefined : nearestWord(name, ruleNames)?.word;
  const hint = near === undefined ? '' : ` The nearest is ${near}.`;
  return {
    message: () =>
      isRule
        ? `No finding of ${name} is on this line, so that nothing is accepted here. Remove the comment, or put it where the finding is.`
        : `“${name}” is no rule, so that nothing is accepted here.${hint}`,
    origin,
    subject,
    fixes: () => [...(near === undefined ? [] : [changeAcceptedRule(idle, near)]), removeAcceptance(idle)],
  };
}
