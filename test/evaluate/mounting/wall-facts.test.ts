import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { there } from '../evaluated-site.ts';
import { factsById } from '../facts-by-id.ts';
import { installedPoint, knownValue, missingOf } from '../installed-point.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const AIR = 'air: {temperature: 35 .. 38 degC, humidity: 65 .. 80 %RH, speed: 0.4 .. 1 m/s}';
const HEADER = 'surroundings: 18 .. 30 degC';

function factsOf(wall: string, air = AIR) {
  const { space } = installedPoint({ space: `{${air}, wall: ${wall}}`, point: '', header: HEADER });
  return factsById(there(space));
}

/** ISO 6946, surface resistances of still air 0.13 m²·K/W on both sides; polyurethane foam 0.028 W/(m·K), steel 17. */
function surfaceByHand(foam: number): number {
  const resistance = 0.13 + 0.001 / 17 + foam / 0.028 + 0.13;
  return 38 - (20 * 0.13) / resistance;
}

const steelAndFoam = (millimetres: number): string =>
  `{thickness: 1 mm, material: stainless-steel, insulation: ${millimetres} mm, insulation-material: polyurethane-foam}`;

describe('inner surface of a wall', () => {
  it('ISO 6946 by hand: 38 °C behind 60 mm of foam, 18 °C outside, air too slow for more than the still film', () => {
    const facts = factsOf(steelAndFoam(60));
    expect(knownValue(facts, 'wall-inner-surface')).toBeCloseTo(surfaceByHand(0.06), 9);
  });

  it('psychrolib: the margin is the surface less the dew point, within the 0.02 K of an ideal gas', () => {
    const dewPoint = psychrolib.GetTDewPointFromRelHum(38, 0.8);
    expect(
      Math.abs(knownValue(factsOf(steelAndFoam(60)), 'wall-margin') - (surfaceByHand(0.06) - dewPoint)),
    ).toBeLessThan(0.02);
  });

  it('ISO 6946: moving air has h = 4 + 4 v, 12 W/(m²·K) at 2 m/s', () => {
    const facts = factsOf(steelAndFoam(60), AIR.replace('0.4 .. 1', '2 .. 4'));
    const resistance = 1 / 12 + 0.001 / 17 + 0.06 / 0.028 + 0.13;
    expect(knownValue(facts, 'wall-inner-surface')).toBeCloseTo(38 - 20 / 12 / resistance, 9);
  });

  it('more insulation never lowers the margin, and the thickness computed keeps it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }), (one, other) => {
        const [thin, thick] = [Math.min(one, other), Math.max(one, other)];
        const margin = (millimetres: number): number => knownValue(factsOf(steelAndFoam(millimetres)), 'wall-margin');
        expect(margin(thick)).toBeGreaterThanOrEqual(margin(thin));
      }),
      { numRuns: 20 },
    );
    const needed = knownValue(factsOf(steelAndFoam(13)), 'wall-insulation-needed');
    expect(knownValue(factsOf(steelAndFoam(needed * 1000)), 'wall-margin')).toBeGreaterThanOrEqual(2);
    // 25 mm is the size sold before 30 mm.
    expect(needed).toBeCloseTo(0.03, 12);
    expect(knownValue(factsOf(steelAndFoam(25)), 'wall-margin')).toBeLessThan(2);
  });

  it('no insulation keeps 2 K in air that is itself closer to its dew point', () => {
    const facts = factsOf(steelAndFoam(60), AIR.replace('80 %RH', '92 %RH'));
    expect(missingOf(facts, 'wall-insulation-needed')).toMatch(/no usual insulation/);
  });
});

describe('outer surface of a wall', () => {
  it('ISO 6946 by hand, with the hottest air and surroundings: 5 K over 60 mm of foam', () => {
    const facts = factsOf(steelAndFoam(60));
    const resistance = 1 / 8 + 0.001 / 17 + 0.06 / 0.028 + 0.13;
    expect(knownValue(facts, 'wall-outer-surface')).toBeCloseTo(30 + (8 * 0.13) / resistance, 9);
  });

  it('EN ISO 13732-1, at second hand: a bare steel wall of a kiln at 75 °C carries the caution of 48 °C', () => {
    const kiln = 'air: {temperature: 60 .. 75 degC, humidity: 40 .. 70 %RH, speed: 1 .. 3 m/s}';
    const facts = factsOf('{thickness: 1.5 mm, material: stainless-steel}', kiln);
    expect(facts.get('wall-outer-surface')?.notes.join(' ')).toContain('10 minutes of contact');
    expect(factsOf(steelAndFoam(60)).get('wall-outer-surface')?.notes.join(' ')).not.toContain('may burn');
  });
});

describe('fitting', () => {
  const fitting = (insulation: string) =>
    factsById(
      installedPoint({
        space: `{${AIR}, wall: ${steelAndFoam(60)}}`,
        point: `humidity-probe: {model: heated, mounting: {insertion: 200 mm${insulation}}}`,
        header: HEADER,
      }),
    );

  it('bare, it is the wall without the insulation of the wall; insulated, with its own in place', () => {
    expect(knownValue(fitting(''), 'fitting-inner-surface')).toBeCloseTo(surfaceByHand(0), 9);
    expect(knownValue(fitting(', insulation: 25 mm'), 'fitting-inner-surface')).toBeCloseTo(surfaceByHand(0.025), 9);
  });

  it('the collar computed keeps it above the dew point', () => {
    const needed = knownValue(fitting(''), 'fitting-insulation-needed');
    expect(knownValue(fitting(`, insulation: ${needed * 1000} mm`), 'fitting-margin')).toBeGreaterThanOrEqual(0);
    expect(fitting(`, insulation: ${needed * 1000} mm`).has('fitting-insulation-needed')).toBe(false);
  });

  it('a probe in a sample line has none, and an insulation that cannot be read is not taken for none', () => {
    expect(fitting(', path: sample-line').has('fitting-margin')).toBe(false);
    expect(fitting(', insulation: thick').has('fitting-margin')).toBe(false);
  });
});
