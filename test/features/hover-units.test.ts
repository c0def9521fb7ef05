import { expect, it } from 'vitest';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { openAt } from './marked-files.ts';

function hoverOf(marked: string): string {
  const { analysis, offset } = openAt('units.dewsite.yaml', marked);
  return hoverAt(analysis, offset)?.markdown ?? '';
}

it.each([
  ['surroundings: |18 .. 30 degC', '= 64.4 … 86 degF = 291.1 … 303.1 K'],
  ['altitude: |210 m', undefined],
  ['altitude: |9 m', '= 9000 mm = 900 cm'],
])('%s is shown in other units, where those can be read, as %s', (pair, shown) => {
  const hover = hoverOf(`dewright: 1\nsite: {id: fennmoor, ${pair}}\n`);
  expect(hover.split('\n').find((line) => line.startsWith('= '))).toBe(shown);
});

it('a gauge pressure stays one in other units', () => {
  const hover = hoverOf('dewright: 1\nsite: {id: fennmoor}\nspaces:\n  duct:\n    pressure: |0.5 bar(g)\n');
  expect(hover).toContain('= 50 kPa(g) = 500 hPa(g)');
});

it('a span is shown in the other units of its quantity', () => {
  const signal = 'AO1: {kind: current-loop, quantity: dew-point, span: |-20 .. 60 degC}';
  const hover = hoverOf(`dewright: 1\nsite: {id: fennmoor}\npoints:\n  A-1:\n    signals:\n      ${signal}\n`);
  expect(hover).toContain('= -4 … 140 degF = 253.1 … 333.1 K');
});
