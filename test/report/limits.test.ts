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

/** Where a rule leaves to another what a limit alone would make it say, or says it in other words. */
const LEAVES_ALONE: Readonly<Record<string, string>> = {
  'supply-out-of-range': 'the supply itself may be over the range',
  'heater-supply-low': 'a supply under the range of the probe itself is told by supply-out-of-range',
  'insertion-short': 'where no usual insertion would do, insulation-missing says so',
  'tolerance-missed': 'a budget that one error of the air temperature makes up is told by the rule of that error',
  'heater-rise-unreachable': 'a supply too low for the heater is told by heater-supply-low',
  'head-too-hot': 'air that is too hot for the model by itself is told by outside-range',
};

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
    const unsaid = [...broken].filter((word) => !found.has(word) && LEAVES_ALONE[ruleOf(word)] === undefined);
    const unheld = [...found].filter(
      (word) => RULES.has(ruleOf(word)) && !broken.has(word) && LEAVES_ALONE[ruleOf(word)] === undefined,
    );
    expect({ unsaid, unheld }).toEqual({ unsaid: [], unheld: [] });
  });
});
