import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plumeWarming, wakeHalfWidth, wakeWarming } from '../../../server/src/physics/heat/plume.ts';
import { anyBetween } from '../any-between.ts';

const NO_CAP = 1e6;

describe('plume above a heated head', () => {
  it('NUREG-1805 eq. 9-2 as open code has it: 700 kW, 2.25 m above the virtual origin gives 507.46 K', () => {
    // That test takes g = 9.8 m/s²; this code 9.80665, which lowers the result by (9.80665/9.8)^-1/3 = 0.99977.
    const air = { celsius: 288 - 273.15, density: 1.2, specificHeat: 1000 };
    const { estimate } = plumeWarming(700e3, 2.25, NO_CAP, air);
    expect(estimate / Math.cbrt(9.8 / 9.80665)).toBeCloseTo(507.4623919, 5);
  });

  it.each([
    [0.5, 5.85],
    [1, 1.84],
  ])('20 W at 293 K, %f m above: %f K by the same formula', (height, expected) => {
    const air = { celsius: 293 - 273.15, density: 1.2, specificHeat: 1000 };
    expect(plumeWarming(20, height, NO_CAP, air).estimate).toBeCloseTo(expected, 2);
  });

  it("Mundt's indoor plume (from memory): 20 W, 0.5 m gives 7.7 K, within the factor of two", () => {
    const { low, high } = plumeWarming(20, 0.5, NO_CAP, { celsius: 20, density: 1.2, specificHeat: 1006 });
    expect(low).toBeLessThan(7.7);
    expect(high).toBeGreaterThan(7.7);
  });
});

describe('wake behind a heated head', () => {
  it('carries all of the heat: its Gaussian profile, summed over the width, is what the head gives', () => {
    const air = { celsius: 60, density: 1.06, specificHeat: 1006 };
    const head = { diameter: 0.012, length: 0.06 };
    const { estimate } = wakeWarming(4, 0.3, 2, head, NO_CAP, air);
    const halfWidth = wakeHalfWidth(0.3, 0.012);
    const step = halfWidth / 100;
    let carried = 0;
    for (let y = -10 * halfWidth; y <= 10 * halfWidth; y += step) {
      const warming = estimate * Math.exp(-Math.LN2 * (y / halfWidth) ** 2);
      carried += warming * air.density * air.specificHeat * 2 * head.length * step;
    }
    expect(carried).toBeCloseTo(4, 6);
  });

  it('Schlichting (from memory): width and depth 0.98·U·√(C_D·D/x) of a wake carry the drag of the cylinder', () => {
    // Momentum: u1·b·√(π/ln 2)·U = C_D·D·U²/2. The printed 0.98 and 1/4 agree on it within 5 %.
    const depth = 0.98 * Math.sqrt((1.2 * 0.012) / 0.5);
    const momentum = depth * wakeHalfWidth(0.5, 0.012) * Math.sqrt(Math.PI / Math.LN2);
    expect(Math.abs(momentum / ((1.2 * 0.012) / 2) - 1)).toBeLessThan(0.05);
  });
});

it('warming is finite, ordered and no more than the rise of the head, for any distance, speed and heat', () => {
  const air = { celsius: 60, density: 1.06, specificHeat: 1006 };
  const any = (max: number): fc.Arbitrary<number> => anyBetween(0, max);
  fc.assert(
    fc.property(any(20), any(2), any(10), any(60), (heat, distance, speed, headRise) => {
      const head = { diameter: 0.012, length: 0.06 };
      for (const { low, estimate, high } of [
        plumeWarming(heat, distance, headRise, air),
        wakeWarming(heat, distance, speed, head, headRise, air),
      ]) {
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(estimate);
        expect(estimate).toBeLessThanOrEqual(high);
        expect(high).toBeLessThanOrEqual(headRise);
      }
    }),
  );
});
