import type { Rule } from './rule.ts';
import { problemsUnder } from './support/file-problems.ts';
import { settingProblems } from './support/visit-settings.ts';

export const rule: Rule = {
  name: 'difference-in-degrees',
  group: 'Reading the file',
  severity: 'warning',
  title: 'A temperature difference is written in °C.',
  why: 'A rise of 8 °C and a temperature of 8 °C look the same and are not: converted to °F one is 14.4, the other 46.4. A difference in K cannot be mistaken.',
  mend: 'Write the difference in K. The number stays the same.',
  sources: ['BIPM, The International System of Units, 9th edition, page 138; at second hand'],
  facts: [],
  fixes: ['safe'],
  check: {
    file: (view) => problemsUnder('difference-in-degrees', view),
    visit: (view) => settingProblems('difference-in-degrees', view),
  },
};
