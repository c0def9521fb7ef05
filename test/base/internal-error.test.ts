import { expect, it } from 'vitest';
import { InternalError, internalErrorWords, lookingAt } from '../../server/src/base/internal-error.ts';

const BROKEN = () => {
  throw new TypeError('it is\n  undefined');
};

function caught(run: () => unknown): unknown {
  try {
    run();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}

it('says what happened at which file in one line, once, however many look at files of files', () => {
  const error = caught(() => lookingAt('a.dewvisit.yaml', () => lookingAt('b.dewsite.yaml', BROKEN)));
  expect(error).toBeInstanceOf(InternalError);
  expect((error as Error).message).toBe('it is undefined, while looking at b.dewsite.yaml');
});

it('tells the version, and keeps the stack for those who ask for it', () => {
  const error = caught(() => lookingAt('b.dewsite.yaml', BROKEN));
  const words = internalErrorWords(error, '1.2.3', false);
  expect(words).toContain('(version 1.2.3): it is undefined, while looking at b.dewsite.yaml; please report it');
  expect(words).not.toContain('internal-error.test.ts');
  expect(internalErrorWords(error, '1.2.3', true)).toContain('internal-error.test.ts');
});
