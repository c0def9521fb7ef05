import type { FindingDraft, IdleAcceptance, Rule } from './rule.ts';
import { addColon } from './support/acceptance-edit.ts';

export const rule: Rule = {
  name: 'acceptance-without-reason',
  group: 'Housekeeping',
  severity: 'error',
  title: 'A comment accepts a finding and does not say why.',
  why: 'Whoever reads the file in a year has to know whether the reason still holds. Without one, nothing is accepted and the finding stays.',
  mend: 'Write the reason behind the name of the rule and a colon: # accept RULE-NAME: reason.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: ['safe'],
  check: {
    acceptances: ({ idle }) => idle.filter(({ reason }) => reason === '').map(withoutReason),
  },
};

function withoutReason(idle: IdleAcceptance): FindingDraft {
  const colon = addColon(idle);
  return {
    message: () =>
      colon === undefined
        ? `Accepting ${idle.rule} needs a reason, and without one the finding stays. Write it behind a colon: # accept ${idle.rule}: reason.`
        : `A colon stands between the rule and the reason, and without it the finding stays: # accept ${idle.rule}: reason.`,
    origin: idle.origin,
    subject: idle.subject,
    fixes: () => (colon === undefined ? [] : [colon]),
  };
}
