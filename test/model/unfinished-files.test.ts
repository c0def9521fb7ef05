import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ParsedFile } from '../../server/src/analysis/parsed-file.ts';
import type { FileKind } from '../../server/src/model/schema.ts';
import type { Origin } from '../../server/src/syntax/nodes.ts';
import { documents } from '../syntax/documents.ts';
import { read } from './problems.ts';

const KINDS: readonly FileKind[] = ['site', 'kit', 'visit'];

function completeExample(kind: FileKind): string {
  return readFileSync(new URL(`../schemas/complete.dew${kind}.yaml`, import.meta.url), 'utf8');
}

/** Reads a text. @returns the problems that name a place, for themselves or for an edit, that the text does not have */
function problemsElsewhere(text: string, kind: FileKind, before?: ParsedFile): readonly string[] {
  const file = read(text, kind, before);
  const isInside = (place: Origin): boolean => {
    const { start, end } = file.rangeOf(place);
    return start >= 0 && start <= end && end <= text.length;
  };
  return file.model.problems.flatMap(({ origin, suggestions, related, sentence }) => {
    const places = [origin, ...suggestions.map(({ edit }) => edit), ...(related === undefined ? [] : [related.origin])];
    return places.every(isInside) ? [] : sentence;
  });
}

describe.each(KINDS)('the complete %s file', (kind) => {
  const text = completeExample(kind);

  it('has no problem', () => {
    expect(read(text, kind).model.problems).toEqual([]);
  });

  it('is read wherever it is cut off', () => {
    const lengths = Array.from(text, (_, length) => length);
    const whole = read(text, kind);
    expect(lengths.flatMap((length) => problemsElsewhere(text.slice(0, length), kind, whole))).toEqual([]);
  });

  it('is read whatever is typed into it, and whatever is deleted', () => {
    const typed = fc.constantFrom(
      '{',
      '}',
      '[',
      '"',
      "'",
      ':',
      ': ',
      '\n',
      '  ',
      '- ',
      '#',
      '*',
      '&',
      '|',
      '<<: ',
      '%',
      '\t',
      ',',
    );
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(4), typed, (at, deleted, added) => {
        expect(problemsElsewhere(text.slice(0, at) + added + text.slice(at + deleted), kind)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});

it('random documents are read as site files', () => {
  fc.assert(
    fc.property(documents, (text) => {
      expect(problemsElsewhere(text, 'site')).toEqual([]);
    }),
    { numRuns: 500 },
  );
});
