import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  finParameter,
  insertionNeeded,
  type Stem,
  stemConductance,
  stemConductionError,
} from '../../../server/src/physics/heat/stem-conduction.ts';
import { anyBetween } from '../any-between.ts';

/** A solid rod is a tube whose wall is half its diameter. */
function rod(diameter: number, conductivity: number): Stem {
  return { diameter, wallThickness: diameter / 2, conductivity };
}

describe('Incropera example 3.9 (from memory, reproduced): 5 mm rods, 100 °C in air of 25 °C, h 100', () => {
  it.each([
    ['copper', 398, 8.3, 0.19],
    ['aluminium alloy', 180, 5.6, 0.13],
    ['stainless steel', 14, 1.6, 0.04],
  ])(
    '%s: loses %f printed watts and is long from the printed length on, to half their last digit',
    (_name, k, heat, longFrom) => {
      expect(Math.abs(75 * stemConductance(rod(0.005, k), 10, 100) - heat)).toBeLessThan(0.05);
      expect(Math.abs(2.65 / finParameter(rod(0.005, k), 100) - longFrom)).toBeLessThan(0.0051);
    },
  );
});

describe('error of the tip', () => {
  it('Bird, Stewart and Lightfoot example 10.7-1: a well that reads 500 °F between a wall of 350 °F and gas of 510 °F', () => {
    // m·L = √12 in the example; a rod with k = h·L²·(4/D)/12 has it. Differences in °F, as the example prints them.
    const diameter = 0.01;
    const insertion = 0.06;
    const stem = rod(diameter, (100 * insertion ** 2 * (4 / diameter)) / 12);
    expect(finParameter(stem, 100) * insertion).toBeCloseTo(Math.sqrt(12), 10);
    const error = stemConductionError(stem, insertion, 100, 510, 350);
    expect(510 - error).toBeCloseTo(500, 1);
  });

  it('Incropera problem 3.131 type: aluminium fin, adiabatic tip, 96.0 °C at its end', () => {
    // A plate 1 mm thick has P/A = 2/t, which a rod of 2 mm diameter (P/A = 4/D) shares.
    const tip = 25 - stemConductionError(rod(0.002, 180), 0.01, 100, 25, 100);
    expect(tip).toBeCloseTo(96.02, 2);
  });

  it('is the whole difference without insertion, and none on a long stem', () => {
    const stem = { diameter: 0.006, wallThickness: 0.0005, conductivity: 17 };
    expect(stemConductionError(stem, 0, 60, 60, 30)).toBe(30);
    expect(stemConductionError(stem, 100, 60, 60, 30)).toBe(0);
  });
});

describe('insertion needed', () => {
  it('leaves just the error asked for', () => {
    const diameter = anyBetween(0.003, 0.02);
    const film = anyBetween(3, 300);
    const wall = anyBetween(-40, 180);
    const largest = anyBetween(0.001, 5);
    fc.assert(
      fc.property(diameter, film, wall, largest, (d, h, wallCelsius, error) => {
        const stem = { diameter: d, wallThickness: d / 10, conductivity: 17 };
        const insertion = insertionNeeded(stem, h, 60, wallCelsius, error);
        expect(insertion.ok).toBe(true);
        if (!insertion.ok) return;
        const left = Math.abs(stemConductionError(stem, insertion.value, h, 60, wallCelsius));
        expect(left).toBeLessThanOrEqual(error * (1 + 1e-9));
        if (insertion.value > 0) expect(left / error).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is nothing where air and wall differ by no more than the error', () => {
    expect(insertionNeeded(rod(0.006, 17), 60, 60, 59.95, 0.1)).toEqual({ ok: true, value: 0 });
    expect(insertionNeeded(rod(0.006, 17), 60, 60, 60, 0.1)).toEqual({ ok: true, value: 0 });
  });

  it('has none for an error of nothing', () => {
    expect(insertionNeeded(rod(0.006, 17), 60, 60, 30, 0)).toEqual({
      ok: false,
      problem: { kind: 'error-not-positive' },
    });
  });
});

it('a stem without length is no perfect sink', () => {
  const stem = rod(0.012, 17);
  expect(stemConductance(stem, 0, 60)).toBe(stemConductance(stem, 0.012, 60));
});

it('a stem of m L = 1 takes coth 1 = 1.31304 times the heat of a long one: Incropera table 3.4, case C, by hand', () => {
  const stem = rod(0.005, 398);
  const short = stemConductance(stem, 1 / finParameter(stem, 100), 100);
  expect(short / stemConductance(stem, 10, 100)).toBeCloseTo(1.31304, 5);
});
