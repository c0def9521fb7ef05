import fc from 'fast-check';
import { expect, it } from 'vitest';
import { relativeDifference } from '../../physics/numeric.ts';
import { factsById } from '../facts-by-id.ts';
import { installedPoint, knownValue, missingOf } from '../installed-point.ts';

interface Heating {
  readonly speed?: string;
  readonly model?: string;
  readonly supply?: string;
}

function factsOf({ speed = '3 .. 12 m/s', model = 'heated', supply = '{voltage: 24 V}' }: Heating) {
  const space = `{pressure: 101.325 kPa, air: {temperature: 60 .. 75 degC, humidity: 40 .. 85 %RH, speed: ${speed}}}`;
  const probe = `{model: ${model}, heater: {mode: continuous, rise: 6 K}, mounting: {insertion: 200 mm}}`;
  return factsById(installedPoint({ space, point: `humidity-probe: ${probe}, supply: ${supply}` }));
}

it('Churchill and Bernstein 1977 with Incropera table A.4 at 350 K: 12 × 60 mm, 12 m/s, on its steel stem', () => {
  const [conductivity, viscosity, prandtl] = [0.03, 20.92e-6, 0.7];
  const reynolds = (12 * 0.012) / viscosity;
  const nusselt =
    0.3 +
    ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25) *
      (1 + (reynolds / 282_000) ** (5 / 8)) ** 0.8;
  const film = (nusselt * conductivity) / 0.012;
  const ofHead = film * Math.PI * 0.012 * (0.06 + 0.003);
  // A long tube of 12 × 1 mm and k 17: √(h P k A).
  const ofStem = Math.sqrt(film * Math.PI * 0.012 * 17 * Math.PI * 0.001 * 0.011);
  const rise = knownValue(factsOf({}), 'rise-reachable');
  // Radiation and natural convection are left out here, and add to 2 % of the heat; the film temperature is 70 to 85 °C.
  expect(relativeDifference(rise, 4 / (ofHead + ofStem))).toBeLessThan(0.04);
});

it('Joule: a resistive heater at half its voltage has a quarter of the power, and so about a quarter of the rise', () => {
  const rise = (volts: number): number =>
    knownValue(factsOf({ model: 'resistive', supply: `{voltage: ${volts} V}` }), 'rise-reachable');
  // The conductance changes a little with the film temperature.
  expect(relativeDifference(rise(12), rise(24) / 4)).toBeLessThan(0.03);
});

it('a constant-power heater reaches the same at any voltage, also where none is given', () => {
  const rise = knownValue(factsOf({}), 'rise-reachable');
  expect(knownValue(factsOf({ supply: '{voltage: 20 V}' }), 'rise-reachable')).toBe(rise);
  expect(knownValue(factsOf({ supply: '{kind: service-cable}' }), 'rise-reachable')).toBe(rise);
});

it('faster air never raises it, it never passes the largest rise of the model, and its corner has the highest speed', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }), (one, other) => {
      const [slow, fast] = [Math.min(one, other), Math.max(one, other)];
      const rise = (speed: number): number => knownValue(factsOf({ speed: `0 .. ${speed} m/s` }), 'rise-reachable');
      expect(rise(fast)).toBeLessThanOrEqual(rise(slow));
      expect(rise(slow)).toBeLessThanOrEqual(20);
    }),
    { numRuns: 20 },
  );
  expect(factsOf({}).get('rise-reachable')?.at?.speed).toBe(12);
});

it('what is worth asking for is no more than what is reached', () => {
  const facts = factsOf({});
  const largest = knownValue(facts, 'largest-rise-to-ask');
  expect(largest).toBeLessThanOrEqual(knownValue(facts, 'rise-reachable'));
  expect(largest % 0.5).toBe(0);
});

it('says what would have to be given', () => {
  const missing = (heating: Heating) => missingOf(factsOf(heating), 'rise-reachable');
  expect(missing({ model: 'resistive', supply: '{kind: service-cable}' })).toBe(
    'the voltage at the probe is not known',
  );
});
