import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { analysisOf, SAMPLE_NAMES, sampleWorkspace } from './sample-files.ts';

const WORKSPACE = sampleWorkspace();
const CLEAN_SAMPLE = 'bakery-prover.dewsite.yaml';
const FAULTY_SAMPLES = SAMPLE_NAMES.filter((name) => name.endsWith('.dewsite.yaml') && name !== CLEAN_SAMPLE);
const KITS = SAMPLE_NAMES.filter((name) => name.endsWith('.dewkit.yaml'));
const VISITS = SAMPLE_NAMES.filter((name) => name.endsWith('.dewvisit.yaml'));

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

  it.each(KITS)('%s has no findings', (name) => {
    expect(analysisOf(WORKSPACE, name).findings.map(inWords)).toEqual([]);
  });

  it('have visits: two in order, one with a spoilt sensor, one with what was left undone', () => {
    const found = VISITS.map((name) => [name, ...analysisOf(WORKSPACE, name).findings.map(inWords)]);
    expect(found).toEqual([
      ['ripening-rooms-2024-09-10.dewvisit.yaml'],
      ['ripening-rooms-2025-09-12.dewvisit.yaml'],
      ['ripening-rooms-2026-09-15.dewvisit.yaml', 'CC-MT-401 visit-disagrees'],
      ['timber-kilns-2026-09-08.dewvisit.yaml', 'K3-MT-101 step-open', 'K1-MT-101 setting-differs'],
    ]);
  });

  it('accepts findings with a reason', () => {
    const accepted = FAULTY_SAMPLES.flatMap((name) => analysisOf(WORKSPACE, name).accepted);
    expect(accepted.length).toBeGreaterThan(0);
    expect(accepted.every(({ reason }) => reason !== '')).toBe(true);
  });
});

const FINDINGS = [...FAULTY_SAMPLES, ...VISITS].flatMap((name) => {
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
