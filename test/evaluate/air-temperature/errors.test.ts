import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { valueIfOk } from '../../../server/src/base/outcome.ts';
import { airTemperatureErrors } from '../../../server/src/evaluate/air-temperature/errors.ts';
import type { ThermometerKind } from '../../../server/src/evaluate/resolved/thermometer.ts';
import { relativeDifference } from '../../physics/numeric.ts';
import { there } from '../evaluated-site.ts';
import { factsById } from '../facts-by-id.ts';
import { installedPoint, type SiteText } from '../installed-point.ts';

const WALL =
  'wall: {thickness: 1.5 mm, material: stainless-steel, insulation: 100 mm, insulation-material: mineral-wool}';
const SPACE = `{pressure: 101.325 kPa, gradient: 0.5 K/m, ${WALL}, air: {temperature: 76.85 degC, humidity: 50 %RH, speed: 10 m/s, ramp: 1 K/min}}`;
const ROD = 'air-temperature-probe: {model: rod, mounting: {insertion: 50 mm, spacing: 100 mm, position: below}}';

/** The errors at the one state of the envelope. */
function errorsOf(text: SiteText, kind: ThermometerKind) {
  const point = installedPoint(text);
  const space = there(point.space);
  const { envelope, sampled } = there(space.phases[0]);
  return airTemperatureErrors(point, space, kind)(there(sampled?.samples[0]).state, envelope);
}

describe('errors of a thermometer at a state', () => {
  const errors = errorsOf({ space: SPACE, point: `humidity-probe: {model: heated}, ${ROD}` }, 'air-temperature-probe');

  it('radiation by hand: steel of emissivity 0.22, Incropera example 7.4 film of 96 W/(m²·K), the wall behind its wool', () => {
    // ISO 6946: 44 W/(m²·K) inside, 0.1 m of 0.04 W/(m·K); the wall is 0.6 K below the air.
    const below = 71.85 / 44 / (1 / 44 + 0.0015 / 17 + 0.1 / 0.04 + 0.13);
    const radiative = 4 * 0.22 * 5.670374419e-8 * (76.85 + 273.15 - below / 2) ** 3;
    // The film of the book and the air properties are each good to 1 %.
    expect(relativeDifference(there(valueIfOk(errors.radiation)), (radiative * below) / (radiative + 96))).toBeLessThan(
      0.02,
    );
  });

  it('gradient by hand: 0.5 K/m over 100 mm', () => {
    expect(valueIfOk(errors.gradient)).toBeCloseTo(0.05, 12);
  });

  it('nothing warms a probe while no heater is on', () => {
    expect(valueIfOk(errors.warming)).toEqual({ estimate: 0, low: 0, high: 0 });
  });

  it('the unheated head is at the spacing and the lag of itself', () => {
    const mounting = 'mounting: {insertion: 200 mm}';
    const own = errorsOf({ space: SPACE, point: `humidity-probe: {model: heated, ${mounting}}` }, 'own-head');
    expect(valueIfOk(own.gradient)).toBe(0);
    expect(valueIfOk(own.lag.difference)).toBe(0);
    expect(valueIfOk(own.lag.thermometer)).toBeGreaterThan(0);
  });
});

describe('facts of an installed point', () => {
  it('are finite or missing, whatever lengths, speeds and powers a file gives', () => {
    const length = fc.constantFrom('-5 mm', '0 mm', '0.001 mm', '40 mm', '3 m', 'unreadable');
    const range = fc.constantFrom('0 .. 0 m/s', '0 .. 60 m/s', '0.0001 m/s', 'unreadable');
    const position = fc.constantFrom('above', 'below', 'downstream');
    const voltage = fc.constantFrom('0 V', '0.1 V', '24 V', '1000 V');
    fc.assert(
      fc.property(length, length, length, range, position, voltage, (one, two, three, speed, where, volts) => {
        const point = installedPoint({
          space: `{gradient: 0.5 K/m, wall: {thickness: ${one}, material: brick, insulation: ${two}, insulation-material: mineral-wool}, air: {temperature: 60 .. 75 degC, humidity: 0 .. 100 %RH, speed: ${speed}, ramp: -1 K/min}}`,
          point: `humidity-probe: {model: resistive, heater: {mode: continuous, rise: 6 K}, mounting: {insertion: ${one}, insulation: ${two}}}, air-temperature-probe: {model: slim, mounting: {insertion: ${three}, insulation: ${one}, spacing: ${two}, position: ${where}}}, reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 5 %RH}, wet-bulb: {air-temperature: air-temperature-probe, tolerance: 0.01 K}}, supply: {voltage: ${volts}, cable: {length: ${three}, conductor: 0.5 mm2}}`,
        });
        for (const fact of [...factsById(point).values(), ...factsById(point.space).values()]) {
          if (fact.value === undefined) expect(fact.missing, fact.id).toBeTruthy();
          else expect(Number.isFinite(fact.value), fact.id).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});
