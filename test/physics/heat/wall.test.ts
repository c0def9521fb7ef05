import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MATERIALS } from '../../../server/src/physics/heat/materials.ts';
import { touchCaution } from '../../../server/src/physics/heat/touch-temperature.ts';
import {
  insulationNeeded,
  movingAirFilm,
  STILL_AIR_FILM,
  surfaceCelsius,
  wallTemperatures,
} from '../../../server/src/physics/heat/wall.ts';
import { anyBetween } from '../any-between.ts';

/** Outdoors: the outer surface resistance of ISO 6946, 0.04 m²·K/W. */
const CONDITIONS = { insideCelsius: 60, outsideCelsius: 5, insideFilm: STILL_AIR_FILM, outsideFilm: 1 / 0.04 };

describe('surface temperatures', () => {
  it('EN ISO 12241-type example: 35 °C, 49.42 W/m on 405.6 mm, h 14.07 gives 32.24 °C as printed', () => {
    // The printed heat flow is used as it stands: it implies another conductivity than the one printed.
    const flux = 49.42 / (Math.PI * 0.4056);
    expect(surfaceCelsius(35, flux, 14.07)).toBeCloseTo(32.243, 3);
  });

  it('ISO 6946 surface resistances: a wall without resistance of its own splits the difference 0.13 to 0.04', () => {
    const bare = wallTemperatures([], CONDITIONS);
    expect(bare.insideSurfaceCelsius).toBeCloseTo(60 - (55 * 0.13) / 0.17, 10);
    expect(bare.outsideSurfaceCelsius).toBeCloseTo(bare.insideSurfaceCelsius, 10);
  });

  it('the same heat passes the inner film, the layers and the outer film', () => {
    const film = anyBetween(2, 100);
    const celsius = anyBetween(-40, 180);
    const thickness = anyBetween(0, 0.5);
    fc.assert(
      fc.property(film, film, celsius, celsius, thickness, (insideFilm, outsideFilm, inside, outside, d) => {
        const conditions = { insideCelsius: inside, outsideCelsius: outside, insideFilm, outsideFilm };
        const wall = wallTemperatures([{ thickness: d, conductivity: 0.04 }], conditions);
        const throughLayer = (wall.insideSurfaceCelsius - wall.outsideSurfaceCelsius) * 0.04;
        // Differences of temperatures near 100 °C carry 1e-14 of it, times the film's coefficient.
        const heatFlux = insideFilm * (inside - wall.insideSurfaceCelsius);
        expect(outsideFilm * (wall.outsideSurfaceCelsius - outside)).toBeCloseTo(heatFlux, 9);
        expect(throughLayer).toBeCloseTo(heatFlux * d, 9);
      }),
    );
  });

  it('ISO 6946 annex, from memory: 3 m/s along the wall gives 4 + 4·3, and still air no less than 1/0.13', () => {
    expect(movingAirFilm(3)).toBe(16);
    expect(movingAirFilm(0)).toBe(STILL_AIR_FILM);
  });
});

describe('insulation needed', () => {
  it.each([
    ['air', 7.9, 4.4],
    ['water', 200, 6.1],
  ])(
    'Incropera example 3.1 (from memory): 100 W over 1.8 m² in %s, film %f, needs the printed %f mm',
    (_medium, outsideFilm, printed) => {
      // Skin of 3 mm, λ 0.3, at 35 °C inside. A very large inner film stands for the fixed temperature, and the flux
      // that the example asks for is the one at which that film drops 1e-6 of its value in kelvin.
      const conditions = { insideCelsius: 35, outsideCelsius: 10, insideFilm: 1e6, outsideFilm };
      const wanted = 35 - 100 / 1.8 / 1e6;
      const needed = insulationNeeded([{ thickness: 0.003, conductivity: 0.3 }], conditions, 0.014, wanted);
      expect(needed.ok && needed.value * 1000).toBeCloseTo(printed, 1);
    },
  );

  it('brings the surface just where it is wanted', () => {
    const steel = { thickness: 0.0015, conductivity: MATERIALS['stainless-steel'].conductivity };
    const needed = insulationNeeded([steel], CONDITIONS, 0.04, 58);
    expect(needed.ok).toBe(true);
    if (!needed.ok) return;
    const insulated = wallTemperatures([steel, { thickness: needed.value, conductivity: 0.04 }], CONDITIONS);
    expect(insulated.insideSurfaceCelsius).toBeCloseTo(58, 9);
  });

  it('is none where the surface is warm enough, and impossible at the air temperature', () => {
    expect(insulationNeeded([{ thickness: 0.1, conductivity: 0.04 }], CONDITIONS, 0.04, 50)).toEqual({
      ok: true,
      value: 0,
    });
    expect(insulationNeeded([], CONDITIONS, 0.04, 60)).toEqual({
      ok: false,
      problem: { kind: 'surface-unreachable', insideCelsius: 60 },
    });
  });
});

describe('materials', () => {
  it('each has a conductivity between foam and copper, and a source', () => {
    for (const { conductivity, source } of Object.values(MATERIALS)) {
      expect(conductivity).toBeGreaterThan(0.02);
      expect(conductivity).toBeLessThan(400);
      expect(source).toMatch(/EN ISO 10456|handbook/);
    }
  });
});

describe('touch temperature', () => {
  it.each([
    [42.9, undefined],
    [43, 43],
    [47.9, 43],
    [48, 48],
    [64.9, 48],
    [65, 65],
    [120, 65],
  ])('ISO 13732-1, at second hand, bare metal of %f °C: threshold %s', (celsius, threshold) => {
    expect(touchCaution(celsius)?.thresholdCelsius).toBe(threshold);
  });
});
