import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headConductance } from '../../../server/src/physics/heat/head-conductance.ts';
import { heaterPower, reachableRise } from '../../../server/src/physics/heat/heater-rise.ts';
import { anyBetween } from '../any-between.ts';
import { HEAD } from '../heated-head.ts';

const AIR = {
  conductivity: 0.0287,
  kinematicViscosity: 19e-6,
  prandtl: 0.703,
  thermalExpansion: 1 / 333,
  density: 1.06,
  specificHeat: 1007,
};

describe('power of a heater', () => {
  it("Joule's law: three quarters of the voltage leave a resistive heater nine sixteenths of its power", () => {
    expect(heaterPower('resistive', 4, 24, 18)).toBeCloseTo(2.25, 12);
  });

  it('a constant-power heater keeps its power', () => {
    expect(heaterPower('constant-power', 4, 24, 18)).toBe(4);
  });
});

describe('rise that a heater reaches', () => {
  it('is power over conductance where the conductance is constant', () => {
    expect(reachableRise(4, () => 0.2, 60).rise).toBeCloseTo(20, 6);
  });

  it('is the root where the conductance grows with the rise: 0.1·ΔT² = 10 W at 10 K', () => {
    expect(reachableRise(10, (rise) => 0.1 * rise, 60).rise).toBeCloseTo(10, 6);
  });

  it('stops at the largest rise of the model', () => {
    expect(reachableRise(1000, () => 0.2, 20)).toEqual({ rise: 20, conductance: 0.2, limitedBy: 'maximum-rise' });
  });

  it('balances power against heat given off, at any speed and power', () => {
    const power = anyBetween(0, 10);
    const speed = anyBetween(0, 10);
    fc.assert(
      fc.property(power, speed, (watts, v) => {
        const conductanceAt = (rise: number): number => headConductance(HEAD, v, rise, 60, AIR).total;
        const { rise, conductance, limitedBy } = reachableRise(watts, conductanceAt, 100);
        // 1e-12 of 100 K times less than 1 W/K, and rounding.
        if (limitedBy === 'power') expect(Math.abs(rise * conductance - watts)).toBeLessThan(1e-9);
        else expect(rise).toBe(100);
      }),
    );
  });
});
