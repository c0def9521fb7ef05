import { describe, expect, it } from 'vitest';
import { fuzzFiles } from './file-fuzz.ts';

const SEED = Number(process.env['DEWRIGHT_SEED'] ?? 20_261_125);

describe('harmed files', () => {
  it('5,000 mutated, truncated, spliced and generated texts: no throw, no second, no number that is none', () => {
    expect(fuzzFiles(5000, SEED).failures).toEqual([]);
  }, 300_000);
});
