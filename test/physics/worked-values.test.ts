import { expect, it } from 'vitest';
import { dryAirProperties } from '../../server/src/physics/air-properties.ts';
import { headConductance } from '../../server/src/physics/head-conductance.ts';
import { verticalCylinderNusselt, verticalPlateNusselt } from '../../server/src/physics/heat-transfer.ts';
import { timeConstantAtSpeed } from '../../server/src/physics/lag.ts';
import { wakeWarming } from '../../server/src/physics/plume.ts';
import { radiationError } from '../../server/src/physics/radiation.ts';
import { insertionNeeded } from '../../server/src/physics/stem-conduction.ts';

/** Values that the documentation of the models states as 'computed': they show what to expect, and must stay true. */
const AIR = dryAirProperties(64, 101_325);

it('a head of 12 × 60 mm at 2 m/s conducts 0.14 W/K, to its last digit', () => {
  const stem = { diameter: 0.012, wallThickness: 0.001, conductivity: 17 };
  const head = { diameter: 0.012, length: 0.06, axis: 'vertical', emissivity: 0.22, stem, stemLength: 0.14 } as const;
  expect(headConductance(head, 2, 8, 60, AIR).total).toBeCloseTo(0.14, 2);
});

it('a slender vertical cylinder has Nu 12.2 where the plate has 8.4, to their last digit', () => {
  expect(verticalCylinderNusselt(1e5, 0.7, 5)).toBeCloseTo(12.2, 1);
  expect(verticalPlateNusselt(0.7e5, 0.7)).toBeCloseTo(8.4, 1);
});

it('a 6 mm stem of 20 s at 1 m/s has 36 s at 0.3 m/s and 12 s at 3 m/s, to half a second', () => {
  const stem = { diameter: 0.006, length: 0.18, axis: 'horizontal' } as const;
  const air = dryAirProperties(60, 101_325);
  expect(Math.abs(timeConstantAtSpeed(20, stem, 0.3, air) - 36)).toBeLessThan(0.5);
  expect(Math.abs(timeConstantAtSpeed(20, stem, 3, air) - 12)).toBeLessThan(0.5);
});

it('the wake of 4 W, 0.12 m downstream at 2 m/s, is 1.4 K warm, to its last digit', () => {
  const air = { celsius: 60, density: 1.06, specificHeat: 1006 };
  expect(wakeWarming(4, 0.12, 2, { diameter: 0.012, length: 0.06 }, 20, air).estimate).toBeCloseTo(1.4, 1);
});

it('a wall 5 K colder pulls a steel probe by 0.15 K, to its last digit', () => {
  expect(radiationError(60, 55, 0.22, 60)).toBeCloseTo(0.15, 2);
});

it('a 6 × 0.5 mm steel tube needs 73 mm for 0.1 K, to its last digit', () => {
  const needed = insertionNeeded({ diameter: 0.006, wallThickness: 0.0005, conductivity: 17 }, 60, 60, 30, 0.1);
  expect(needed.ok && needed.value * 1000).toBeCloseTo(72.9, 1);
});
