import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rampDifference, rampLag, timeConstantAtSpeed } from '../../../server/src/physics/heat/lag.ts';
import { anyBetween } from '../any-between.ts';

const AIR = {
  conductivity: 0.0287,
  kinematicViscosity: 19e-6,
  prandtl: 0.703,
  thermalExpansion: 1 / 333,
  density: 1.06,
  specificHeat: 1007,
};
const STEM = { diameter: 0.006, length: 0.18, axis: 'horizontal' } as const;

describe('lag behind a ramp', () => {
  it('by hand: 0.5 K/min and 20 s trail 1/6 K', () => {
    expect(rampLag(0.5 / 60, 20)).toBeCloseTo(1 / 6, 12);
  });

  it('satisfies the first-order equation dT/dt = (T(air) − T)/τ at length, by stepping it in time', () => {
    // Explicit steps of τ/1000 for 20 τ, after which 2e-9 of the lag is lacking; a ramp is stepped without error.
    let probe = 0;
    const step = 0.02;
    for (let n = 0; n < 20_000; n++) probe += ((0.1 * n * step - probe) / 20) * step;
    expect(0.1 * 400 - probe).toBeCloseTo(rampLag(0.1, 20), 6);
  });

  it('by hand: 15 s and 45 s at 0.5 K/min read 0.25 K apart, the slower one lower', () => {
    expect(rampDifference(0.5 / 60, 15, 45)).toBeCloseTo(-0.25, 12);
  });
});

describe('time constant with speed', () => {
  it('is the one given at 1 m/s', () => {
    expect(timeConstantAtSpeed(20, STEM, 1, AIR)).toBe(20);
  });

  it('falls roughly with the square root of speed, as Nu ~ Re^1/2 of a cylinder at these Reynolds numbers', () => {
    // Churchill and Bernstein give 0.50 between Re 300 and 1300; handbook power laws 0.466 (Re to 4000) and 0.5.
    const exponent = Math.log(20 / timeConstantAtSpeed(20, STEM, 4, AIR)) / Math.log(4);
    expect(exponent).toBeGreaterThan(0.45);
    expect(exponent).toBeLessThan(0.55);
  });

  it('is finite and falls with speed, still air included', () => {
    fc.assert(
      fc.property(anyBetween(0, 50), (speed) => {
        const here = timeConstantAtSpeed(20, STEM, speed, AIR);
        expect(here).toBeGreaterThan(0);
        expect(here).toBeLessThan(400);
        expect(timeConstantAtSpeed(20, STEM, speed + 0.1, AIR)).toBeLessThan(here);
      }),
    );
  });
});
