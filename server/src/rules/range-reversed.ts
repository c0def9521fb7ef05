import type { Rule } from './rule.ts';
import { problemsUnder } from './support/file-problems.ts';
import { settingProblems } from './support/visit-settings.ts';

export const rule: Rule = {
  name: 'range-reversed',
  group: 'Reading the file',
  severity: 'error',
  title: 'A range runs from high to low.',
  why: 'A range is the lowest and the highest value, in this order. The wrong way round it holds no value at all, and nothing that depends on it is checked.',
  mend: 'Swap the two numbers. An output that falls while its quantity rises cannot be written in this format.',
  sources: ['The file format: LOW .. HIGH UNIT'],
  facts: [],
  fixes: ['safe'],
  check: {
    file: (view) => problemsUnder('range-reversed', view),
    visit: (view) => settingProblems('range-reversed', view),
  },
};
