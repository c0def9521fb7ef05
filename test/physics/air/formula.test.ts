import { expect, it } from 'vitest';
import { checkValidity, type Formula } from '../../../server/src/physics/formula.ts';

const FORMULA: Formula = {
  id: 'example',
  title: 'Example',
  source: 'none',
  validity: [
    { argument: 'celsius', low: 0, high: 100, unit: 'degC' },
    { argument: 'pressure', low: 5e3, high: 2e6, unit: 'Pa' },
  ],
};

it('both ends of a published range belong to it', () => {
  expect(checkValidity(FORMULA, { celsius: 0, pressure: 2e6 })).toBeUndefined();
});

it('the first argument outside its range is named with its value', () => {
  const outside = checkValidity(FORMULA, { celsius: 100.5, pressure: 1 });
  expect(outside).toEqual({ kind: 'outside-formula', formula: FORMULA, argument: 'celsius', value: 100.5 });
});

it('an argument that is not given, or that the formula states no range for, is not judged', () => {
  expect(checkValidity(FORMULA, { pressure: 1e5, speed: -1 })).toBeUndefined();
});

it('a number that is not finite lies outside', () => {
  for (const pressure of [Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(checkValidity(FORMULA, { pressure })?.argument).toBe('pressure');
  }
});
