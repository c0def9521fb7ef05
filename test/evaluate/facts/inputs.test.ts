import { expect, it } from 'vitest';
import { assessedPoint } from '../assessed-point.ts';
import { known } from '../evaluated-site.ts';
import { factsById } from '../facts-by-id.ts';

it('what goes into both ends of a range is told once', () => {
  const point = assessedPoint({
    space: '{air: {temperature: 20 .. 30 degC, humidity: 30 .. 60 %RH}}',
    point:
      'humidity-probe: {model: plain}, transmitter: {model: two-probes}, reports: {mixing-ratio: {pressure: 99 kPa}}, signals: {HR1: {kind: register, quantity: mixing-ratio, address: 40, format: float32}}',
  });
  const { inputs } = known(factsById(point).get('signal/HR1/one-count'));
  expect(inputs.filter(({ label }) => label === 'pressure of the report')).toHaveLength(1);
});
