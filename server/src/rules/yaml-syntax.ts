import type { Rule } from './rule.ts';
import { problemsUnder } from './support/file-problems.ts';

export const rule: Rule = {
  name: 'yaml-syntax',
  group: 'Reading the file',
  severity: 'error',
  title: 'The YAML does not parse here.',
  why: 'What cannot be parsed is not checked: the point or space that it stands in is left out until it is mended. The rest of the file is checked all the same.',
  mend: 'Look at the line marked and the one above it: a bracket, quote, comma or colon is missing, or a line is not indented as its neighbours are.',
  leavesAlone: 'Keys and values that parse but do not fit the format: schema and value-unreadable speak of those.',
  sources: ['YAML 1.2.2, yaml.org/spec'],
  facts: [],
  fixes: [],
  check: { file: (view) => problemsUnder('yaml-syntax', view) },
};
