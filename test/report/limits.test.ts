/**
 * A pack tells which number keeps which limit, by itself: what rules say of a point is no data. So that the two cannot
 * drift apart, every point of the corpus and of the samples is held to both: a limit is not kept exactly where its rule
 * has a finding.
 */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { heldFacts } from '../../server/src/report/limits.ts';
import { analyseCorpusFile, corpusFiles, readCorpusFile } from '../corpus/corpus-files.ts';
import { readMarks } from '../rules/fixture.ts';
import { SAMPLE_PACKS } from './packs.ts';

/** One word for a rule at a point. */
type Broken = `${string} ${string}`;

/** Silent where one error of the air temperature makes up the budget: the rule of that error speaks. */
const MAY_BE_SILENT = 'tolerance-missed';
/** Speaks also of a supply that is over the range. */
const SAYS_MORE = 'supply-out-of-range';

function brokenLimits({ content }: Analysis): ReadonlySet<Broken> {
  const points = content.kind === 'site' ? [...content.site.points.values()] : [];
  const broken = points.flatMap((point) =>
    heldFacts(point)
      .filter(({ isKept }) => !isKept)
      .map(({ rule }): Broken => `${point.tag} ${rule}`),
  );
  return new Set(broken);
}

function findingsOf({ findings, accepted }: Analysis): ReadonlySet<Broken> {
  return new Set([...findings, ...accepted].map(({ subject, rule }): Broken => `${subject} ${rule}`));
}

const SITES = [
  ...SAMPLE_PACKS.map(({ name, analysis }) => ({ name, analysis })),
  ...corpusFiles('sound').map((name) => ({ name, analysis: analyseCorpusFile('sound', name) })),
  ...corpusFiles('faulty').map((name) => ({
    name,
    analysis: analyseCorpusFile('faulty', name, readMarks(readCorpusFile('faulty', name)).text),
  })),
];
const HELD = SITES.flatMap(({ analysis: { content } }) =>
  content.kind === 'site' ? [...content.site.points.values()].flatMap(heldFacts) : [],
);
const RULES = new Set(HELD.map(({ rule }) => rule));

describe('the limits of a pack and the rules', () => {
  it('have kept and broken limits to compare', () => {
    expect(HELD.filter(({ isKept }) => isKept).length).toBeGreaterThan(100);
    expect(new Set(HELD.flatMap(({ rule, isKept }) => (isKept ? [] : [rule]))).size).toBeGreaterThan(6);
  });

  it.each(SITES)('agree in $name', ({ analysis }) => {
    const [broken, found] = [brokenLimits(analysis), findingsOf(analysis)];
    const ruleOf = (word: Broken): string => word.slice(word.lastIndexOf(' ') + 1);
    const unsaid = [...broken].filter((word) => !found.has(word) && ruleOf(word) !== MAY_BE_SILENT);
    const held = [...found].filter((word) => RULES.has(ruleOf(word)) && ruleOf(word) !== SAYS_MORE);
    const unheld = held.filter((word) => !broken.has(word));
    expect({ unsaid, unheld }).toEqual({ unsaid: [], unheld: [] });
  });
});
