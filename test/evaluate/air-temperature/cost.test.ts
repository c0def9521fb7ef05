import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { relativeDifference, steps } from '../../physics/numeric.ts';
import { factsById } from '../facts-by-id.ts';
import { installedPoint, knownValue, missingOf } from '../installed-point.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const HEATED = 'humidity-probe: {model: heated, heater: {mode: continuous, rise: 6 K}, mounting: {insertion: 200 mm}}';
const REPORTS = 'reports: {relative-humidity: {air-temperature: air-temperature-probe, tolerance: 5 %RH}}';

interface Place {
  readonly air?: string;
  readonly space?: string;
  readonly probe?: string;
  readonly mounting: string;
}

function factsOf({ air = AIR, space = '', probe = 'slim', mounting }: Place) {
  const point = `${HEATED}, air-temperature-probe: {model: ${probe}, mounting: {${mounting}}}, ${REPORTS}`;
  return factsById(installedPoint({ space: `{pressure: 101.325 kPa, air: {${air}}${space}}`, point }));
}

const AIR = 'temperature: 60 .. 75 degC, humidity: 40 .. 85 %RH, speed: 1 .. 3 m/s';
const KILN_WALL =
  ', wall: {thickness: 1.5 mm, material: stainless-steel, insulation: 100 mm, insulation-material: mineral-wool}';

describe('stem conduction', () => {
  // 350 K, where Incropera table A.4 is tabulated, at the speed of example 7.4; the envelope is that one state.
  const air = 'temperature: 76.85 degC, humidity: 50 %RH, speed: 10 m/s';
  const insertion = 0.05;
  const rod = (more = '') =>
    factsOf({ air, space: KILN_WALL, probe: 'rod', mounting: `insertion: ${insertion * 1000} mm${more}` });

  it('Incropera example 7.4 and the fin of Bird, Stewart and Lightfoot 10.7-1: 12.7 mm at 10 m/s, h 96, 50 mm deep', () => {
    const film = 96;
    // A solid rod of k 17: m = √(4 h / k D).
    const finParameter = Math.sqrt((4 * film) / (17 * 0.0127));
    // ISO 6946: 44 W/(m²·K) at 10 m/s inside, 0.13 m²·K/W outside; 5 °C pulls more than 32 °C.
    const fitting = 76.85 - (71.85 / 44) * (1 / (1 / 44 + 0.0015 / 17 + 0.13));
    const byHand = (76.85 - fitting) / Math.cosh(finParameter * insertion);
    // The film of the book is rounded to 1 % and the air properties to 1 %: with m L = 2.1, 2.5 % of the error.
    expect(relativeDifference(knownValue(rod(), 'relative-humidity/stem-conduction-error'), byHand)).toBeLessThan(
      0.025,
    );
  });

  it('psychrolib: its cost is the change of relative humidity that such an error makes', () => {
    const error = knownValue(rod(), 'relative-humidity/stem-conduction-error');
    const vapour = 0.5 * psychrolib.GetSatVapPres(76.85);
    const step = 0.01;
    const perKelvin =
      (vapour / psychrolib.GetSatVapPres(76.85 - step) - vapour / psychrolib.GetSatVapPres(76.85 + step)) / (2 * step);
    // psychrolib is an ideal gas: the enhancement factor's own slope adds a little.
    expect(
      relativeDifference(knownValue(rod(), 'relative-humidity/stem-conduction-cost'), error * perKelvin),
    ).toBeLessThan(0.01);
  });

  it('more insertion never raises it, and neither does insulation around the fitting', () => {
    const length = fc.integer({ min: 10, max: 300 });
    const collar = fc.integer({ min: 0, max: 80 });
    fc.assert(
      fc.property(length, length, collar, collar, (one, other, thin, thick) => {
        const error = (insert: number, insulation: number): number =>
          knownValue(
            factsOf({ space: KILN_WALL, mounting: `insertion: ${insert} mm, insulation: ${insulation} mm` }),
            'relative-humidity/stem-conduction-error',
          );
        const [short, long] = [Math.min(one, other), Math.max(one, other)];
        expect(error(long, 0)).toBeLessThanOrEqual(error(short, 0));
        expect(error(short, Math.max(thin, thick))).toBeLessThanOrEqual(error(short, Math.min(thin, thick)));
      }),
      { numRuns: 15 },
    );
  });

  it('the insertion computed brings it down to a third of the tolerance, and 10 mm less does not', () => {
    const needed = knownValue(
      factsOf({ space: KILN_WALL, mounting: 'insertion: 30 mm' }),
      'relative-humidity/insertion-needed',
    );
    const cost = (insertion: number): number =>
      knownValue(
        factsOf({ space: KILN_WALL, mounting: `insertion: ${insertion * 1000} mm` }),
        'relative-humidity/stem-conduction-cost',
      );
    expect(cost(needed)).toBeLessThanOrEqual(0.05 / 3);
    expect(cost(needed - 0.01)).toBeGreaterThan(0.05 / 3);
  });
});

it('no single state of an envelope costs more than is told of the envelope, close to an end of its temperatures either', () => {
  const costIn = (temperature: string): number =>
    knownValue(
      factsById(
        installedPoint({
          space: `{pressure: 700 kPa, air: {temperature: ${temperature} degC, dew-point-depression: 12 K, speed: 0.3 m/s}, wall: {thickness: 1.5 mm, material: stainless-steel}}`,
          point: `${HEATED}, air-temperature-probe: {model: slim, mounting: {insertion: 80 mm}}, reports: {vapour-pressure-deficit: {air-temperature: air-temperature-probe, tolerance: 10 Pa}}`,
        }),
      ),
      'vapour-pressure-deficit/stem-conduction-cost',
    );
  // The surroundings are from 5 to 32 °C: the error falls as the air gets warmer, the sensitivity rises.
  const everywhere = Math.max(...steps(-20, 18, 0.5).map((celsius) => costIn(`${celsius}`)));
  // 77 single states; rounding alone.
  expect(costIn('-20 .. 18')).toBeGreaterThan(everywhere * (1 - 1e-9));
});

describe('budget', () => {
  it('near saturation 0.1 K costs about 0.6 %RH (common practice): 5 %RH at 13 °C and 95 %RH are about 0.8 K', () => {
    const facts = factsOf({
      air: 'temperature: 13 degC, humidity: 95 %RH, speed: 0.2 m/s',
      mounting: 'insertion: 180 mm',
    });
    const budget = knownValue(facts, 'relative-humidity/air-temperature-budget');
    // '0.6 %RH' is rounded to one digit.
    expect(Math.abs(0.1 * (0.05 / budget) - 0.006)).toBeLessThan(0.0005);
  });
});

describe('gradient', () => {
  it('by hand: 0.8 K/m over 700 mm is 0.56 K', () => {
    const facts = factsOf({ space: ', gradient: 0.8 K/m', mounting: 'insertion: 180 mm, spacing: 700 mm' });
    expect(knownValue(facts, 'relative-humidity/gradient-error')).toBeCloseTo(0.56, 12);
    const largest = knownValue(facts, 'relative-humidity/largest-spacing');
    const mended = factsOf({
      space: ', gradient: 0.8 K/m',
      mounting: `insertion: 180 mm, spacing: ${largest * 1000} mm`,
    });
    expect(knownValue(mended, 'relative-humidity/gradient-cost')).toBeLessThanOrEqual(0.05 / 3);
  });
});

describe('lag', () => {
  it('by hand: 0.5 K/min at the 1 m/s of the data sheet, 20 s: 0.167 K', () => {
    const facts = factsOf({ air: `${AIR}, ramp: 0.5 K/min`, mounting: 'insertion: 180 mm' });
    expect(knownValue(facts, 'relative-humidity/lag-error')).toBeCloseTo((0.5 / 60) * 20, 9);
  });

  it('slower air never lessens it', () => {
    const lag = (speed: number): number =>
      knownValue(
        factsOf({ air: `${AIR.replace('1 .. 3', `${speed} .. 3`)}, ramp: 0.5 K/min`, mounting: 'insertion: 180 mm' }),
        'relative-humidity/lag-error',
      );
    const lags = [2, 1, 0.5, 0.2, 0.1, 0].map(lag);
    expect(lags).toEqual(lags.toSorted((one, other) => one - other));
  });
});

describe('warmth of the heated head', () => {
  const slow = AIR.replace('1 .. 3', '0.1 .. 3');
  const warming = (air: string, mounting: string): number =>
    knownValue(factsOf({ air, mounting: `insertion: 180 mm, ${mounting}` }), 'relative-humidity/head-warming-error');

  it('is none below, beside and upstream, nor above it in air that always moves', () => {
    for (const position of ['below', 'beside', 'upstream'])
      expect(warming(slow, `spacing: 50 mm, position: ${position}`)).toBe(0);
    expect(warming(AIR, 'spacing: 50 mm, position: above')).toBe(0);
    expect(warming(slow, 'spacing: 50 mm, position: above')).toBeGreaterThan(0);
  });

  it('is never more than the rise, and falls with the spacing', () => {
    const positions = [
      [slow, 'above'],
      [AIR, 'downstream'],
    ] as const;
    for (const [air, position] of positions) {
      const at = [10, 50, 100, 200, 400, 800].map((spacing) =>
        warming(air, `spacing: ${spacing} mm, position: ${position}`),
      );
      expect(Math.max(...at)).toBeLessThanOrEqual(6);
      expect(at).toEqual(at.toSorted((one, other) => other - one));
    }
  });

  it('the spacing computed brings it down to a third of the tolerance, and 10 mm less does not', () => {
    const place = (spacing: number): Place => ({
      air: slow,
      mounting: `insertion: 180 mm, spacing: ${spacing * 1000} mm, position: above`,
    });
    const needed = knownValue(factsOf(place(0.1)), 'relative-humidity/spacing-needed');
    const cost = (spacing: number): number =>
      knownValue(factsOf(place(spacing)), 'relative-humidity/head-warming-cost');
    expect(cost(needed)).toBeLessThanOrEqual(0.05 / 3);
    expect(cost(needed - 0.01)).toBeGreaterThan(0.05 / 3);
  });
});

it('says what would have to be given', () => {
  const facts = factsOf({ mounting: 'insertion: 180 mm, position: above' });
  expect(missingOf(facts, 'relative-humidity/stem-conduction-error')).toBe('the space gives no wall');
  expect(missingOf(facts, 'relative-humidity/gradient-error')).toBe('the space gives no gradient');
  expect(missingOf(facts, 'relative-humidity/lag-error')).toBe('the phase gives no ramp');
  expect(missingOf(facts, 'relative-humidity/head-warming-error')).toBe('no spacing is given');
});

it('a report that needs no air temperature, or takes it from elsewhere, has no such errors', () => {
  const point = `${HEATED}, air-temperature-probe: {model: slim}, reports: {dew-point: {tolerance: 1 K}, relative-humidity: {air-temperature: 60 degC, tolerance: 5 %RH}}`;
  const facts = factsById(installedPoint({ space: `{air: {${AIR}}}`, point }));
  expect([...facts.keys()].filter((id) => /-(error|cost|budget)$/.test(id) && !id.includes('fixed'))).toEqual([]);
});
