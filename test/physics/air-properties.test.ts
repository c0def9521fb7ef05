import { describe, expect, it } from 'vitest';
import { airConductivity, dryAirDensity, dryAirProperties } from '../../server/src/physics/air-properties.ts';
import { relativeDifference } from './numeric.ts';

/**
 * Incropera and DeWitt table A.4: T in K, ν in 1e-6 m²/s, α in 1e-6 m²/s, k in 1e-3 W/(m·K), Pr. Its densities
 * (1.1614 kg/m³ at 300 K) show that 'atmospheric pressure' is 100 kPa there, not 101.325 kPa.
 */
const TABLE_A4 = [
  [250, 11.44, 15.9, 22.3, 0.72],
  [300, 15.89, 22.5, 26.3, 0.707],
  [350, 20.92, 29.9, 30, 0.7],
  [400, 26.41, 38.3, 33.8, 0.69],
  [450, 32.39, 47.2, 37.3, 0.686],
] as const;

describe.each(TABLE_A4)('Incropera table A.4, %d K', (kelvin, viscosity, diffusivity, conductivity, prandtl) => {
  const air = dryAirProperties(kelvin - 273.15, 1e5);

  it('kinematic viscosity within 0.5 %, conductivity and diffusivity within 1 %, Prandtl number within 1.5 %', () => {
    // The table's own rounding is 0.3 %; the fit of the standard atmosphere is compared well above its 288 K here.
    expect(relativeDifference(air.kinematicViscosity, viscosity * 1e-6)).toBeLessThan(0.005);
    expect(relativeDifference(air.conductivity, conductivity * 1e-3)).toBeLessThan(0.01);
    const ours = air.conductivity / (air.density * air.specificHeat);
    expect(relativeDifference(ours, diffusivity * 1e-6)).toBeLessThan(0.01);
    expect(relativeDifference(air.prandtl, prandtl)).toBeLessThan(0.015);
  });
});

it.each([
  [300, 1.1614],
  [350, 0.995],
  [400, 0.8711],
])('Incropera table A.4, %d K, 100 kPa: density %d kg/m³ within 0.03 %%', (kelvin, density) => {
  expect(relativeDifference(dryAirDensity(kelvin - 273.15, 1e5), density)).toBeLessThan(3e-4);
});

it.each([
  [20, 1.204, 0.02514],
  [25, 1.184, 0.02551],
  [50, 1.092, 0.02735],
  [100, 0.9458, 0.03095],
])(
  'Çengel table A-9, %d °C, 1 atm: density within 0.06 %%, conductivity within 1.5 %%',
  (celsius, density, conductivity) => {
    // Half of the last printed digit is 0.05 %. The two textbooks differ by 1 % in conductivity.
    expect(relativeDifference(dryAirDensity(celsius, 101_325), density)).toBeLessThan(6e-4);
    expect(relativeDifference(airConductivity(celsius), conductivity)).toBeLessThan(0.015);
  },
);

it('kinematic viscosity goes inversely with pressure; conductivity and Prandtl number do not change', () => {
  const low = dryAirProperties(60, 1e5);
  const high = dryAirProperties(60, 8e5);
  expect(low.kinematicViscosity / high.kinematicViscosity).toBeCloseTo(8, 10);
  expect([high.conductivity, high.prandtl]).toEqual([low.conductivity, low.prandtl]);
});

it('thermal expansion is that of an ideal gas: 1/300 per K at 300 K', () => {
  expect(dryAirProperties(26.85, 1e5).thermalExpansion).toBeCloseTo(1 / 300, 15);
});
