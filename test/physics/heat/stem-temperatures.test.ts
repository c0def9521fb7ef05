import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  finParameter,
  type Stem,
  stemConductance,
  stemConductionError,
} from '../../../server/src/physics/heat/stem-conduction.ts';
import { type StemSurroundings, stemCelsius } from '../../../server/src/physics/heat/stem-temperatures.ts';
import { anyBetween } from '../any-between.ts';

const STEEL: Stem = { diameter: 0.012, wallThickness: 0.001, conductivity: 17 };

describe('free tip', () => {
  it('Incropera problem 3.131 type: aluminium fin, adiabatic tip, 96.0 °C at its end', () => {
    // A plate 1 mm thick has P/A = 2/t, which a rod of 2 mm diameter (P/A = 4/D) shares.
    const rod = { diameter: 0.002, wallThickness: 0.001, conductivity: 180 };
    const around = { length: 0.01, film: 100, airCelsius: 25, wallCelsius: 100, headCelsius: undefined };
    expect(stemCelsius(rod, around, 0.01)).toBeCloseTo(96.02, 2);
  });

  it('starts at the wall and ends where the stem-conduction error says, also on a stem of 100 m', () => {
    fc.assert(
      fc.property(anyStem(), fc.constantFrom(0.02, 0.2, 100), (around, length) => {
        const free = { ...around, length, headCelsius: undefined };
        const { film, airCelsius, wallCelsius } = free;
        const tip = airCelsius - stemConductionError(STEEL, length, film, airCelsius, wallCelsius);
        expect(stemCelsius(STEEL, free, 0)).toBeCloseTo(wallCelsius, 9);
        expect(stemCelsius(STEEL, free, length)).toBeCloseTo(tip, 9);
      }),
    );
  });
});

describe('held end', () => {
  it('starts at the wall and ends at the head', () => {
    fc.assert(
      fc.property(anyStem(), (around) => {
        expect(stemCelsius(STEEL, around, 0)).toBeCloseTo(around.wallCelsius, 9);
        expect(stemCelsius(STEEL, around, around.length)).toBeCloseTo(around.headCelsius, 9);
      }),
    );
  });

  it('without a length is as warm as the wall, with a head and without one', () => {
    for (const headCelsius of [68, undefined]) {
      const around = { length: 0, film: 30, airCelsius: 60, wallCelsius: 40, headCelsius };
      expect(stemCelsius(STEEL, around, 0)).toBe(40);
    }
  });

  it('the slope at a head with the far end at air temperature carries the heat of Incropera table 3.4, case C', () => {
    const around = { length: 0.14, film: 30, airCelsius: 60, wallCelsius: 60, headCelsius: 68 };
    const section = Math.PI * 0.001 * 0.011;
    const step = 1e-7;
    const slope = (68 - stemCelsius(STEEL, around, 0.14 - step)) / step;
    // A difference quotient over 0.1 µm is good to about 1e-5 of the slope.
    expect((17 * section * slope) / (8 * stemConductance(STEEL, 0.14, 30))).toBeCloseTo(1, 4);
  });
});

it('the fin equation θ″ = m² θ holds all along, by finite differences', () => {
  const step = 1e-4;
  fc.assert(
    fc.property(anyStem(), anyBetween(0.1, 0.9), fc.boolean(), (around, share, heated) => {
      const stem: StemSurroundings = heated ? around : { ...around, headCelsius: undefined };
      const x = share * stem.length;
      const [before, here, after] = [x - step, x, x + step].map((at) => stemCelsius(STEEL, stem, at));
      if (before === undefined || here === undefined || after === undefined) throw new Error('three values');
      const curvature = (before - 2 * here + after) / step ** 2;
      const expected = finParameter(STEEL, stem.film) ** 2 * (here - stem.airCelsius);
      // Rounding: 1e-13 of 100 °C over (0.1 mm)² is 1e-3 K/m²; truncation: m² step² / 12 of the value, below 1e-4.
      expect(Math.abs(curvature - expected)).toBeLessThan(0.05 + 1e-4 * Math.abs(expected));
    }),
  );
});

function anyStem() {
  return fc.record({
    length: anyBetween(0.02, 0.4),
    film: anyBetween(5, 100),
    airCelsius: anyBetween(0, 90),
    wallCelsius: anyBetween(-20, 90),
    headCelsius: anyBetween(0, 110),
  });
}
