import type { Rule } from './rule.ts';
import { problemsUnder } from './support/file-problems.ts';
import { settingProblems, wordsNotKnown } from './support/visit-settings.ts';

export const rule: Rule = {
  name: 'value-unreadable',
  group: 'Reading the file',
  severity: 'error',
  title: 'A value is no number with a unit of its kind, or no date.',
  why: 'A number without a unit is read one way by the writer and another way by the fitter. Nothing that depends on the value is checked until it can be read.',
  mend: 'Write the number with a decimal point and one of the units that the message names, and dates as YYYY-MM-DD.',
  sources: ['The units that the file formats accept'],
  facts: [],
  fixes: ['safe', 'choice'],
  check: {
    file: (view) => problemsUnder('value-unreadable', view),
    visit: (view) => [...settingProblems('value-unreadable', view), ...wordsNotKnown(view)],
  },
};
