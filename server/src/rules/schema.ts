import type { Rule } from './rule.ts';
import { problemsUnder } from './support/file-problems.ts';

export const rule: Rule = {
  name: 'schema',
  group: 'Reading the file',
  severity: 'error',
  title: 'A key or a word does not fit the file format.',
  why: 'A misspelt key is a key that nobody reads: the point would be checked as if it were not there.',
  mend: 'Take the key or word that the message names. Keys that the format does not have are removed, or become comments.',
  leavesAlone: 'Values with units: value-unreadable speaks of those.',
  sources: ['The schemas dewsite, dewkit and dewvisit, which come with Dewright'],
  facts: [],
  fixes: ['safe', 'choice'],
  check: { file: (view) => problemsUnder('schema', view) },
};
