import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { isKnown, showFact } from '../../server/src/evaluate/fact.ts';
import { hoverAt } from '../../server/src/features/hover.ts';
import { analysisOf, SAMPLE_NAMES, sampleWorkspace } from './sample-files.ts';

const WORKSPACE = sampleWorkspace();
const CLEAN_SAMPLE = 'bakery-prover.dewsite.yaml';
const FAULTY_SAMPLES = SAMPLE_NAMES.filter((name) => name.endsWith('.dewsite.yaml') && name !== CLEAN_SAMPLE);
const OTHER_FILES = SAMPLE_NAMES.filter((name) => !name.endsWith('.dewsite.yaml'));

describe('the samples', () => {
  it('has one site done right, about which no rule has anything to say', () => {
    expect(analysisOf(WORKSPACE, CLEAN_SAMPLE).findings.map(inWords)).toEqual([]);
    expect(analysisOf(WORKSPACE, CLEAN_SAMPLE).accepted).toEqual([]);
  });

  it.each(FAULTY_SAMPLES)('%s shows three to ten findings', (name) => {
    const { findings } = analysisOf(WORKSPACE, name);
    expect(findings.length).toBeGreaterThanOrEqual(3);
    expect(findings.length).toBeLessThanOrEqual(10);
  });

  it.each(OTHER_FILES)('%s has no findings', (name) => {
    expect(analysisOf(WORKSPACE, name).findings.map(inWords)).toEqual([]);
  });

  it('accepts findings with a reason', () => {
    const accepted = FAULTY_SAMPLES.flatMap((name) => analysisOf(WORKSPACE, name).accepted);
    expect(accepted.length).toBeGreaterThan(0);
    expect(accepted.every(({ reason }) => reason !== '')).toBe(true);
  });
});

const FINDINGS = FAULTY_SAMPLES.flatMap((name) => {
  const analysis = analysisOf(WORKSPACE, name);
  return [...analysis.findings, ...analysis.accepted].map((finding) => ({ analysis, finding }));
});
const NUMBERS = FINDINGS.flatMap(({ analysis, finding }) =>
  finding.facts.filter(isKnown).map((fact) => ({ analysis, finding, fact, id: fact.id, where: inWords(finding) })),
);

describe('one number is one text', () => {
  it.each(NUMBERS)('$id stands in the message: $where', ({ finding, fact }) => {
    expect(finding.message).toContain(showFact(fact));
  });

  it.each(NUMBERS)('$id stands in the hover at the finding: $where', ({ analysis, finding, fact }) => {
    expect(hoverAt(analysis, finding.range.start)?.markdown).toContain(showFact(fact));
  });
});

function inWords({ subject, rule }: Finding): string {
  return `${subject} ${rule}`;
}
