import { expect, it } from 'vitest';
import { valueIfOk } from '../../server/src/base/outcome.ts';
import { dryAirProperties } from '../../server/src/physics/air/air-properties.ts';
import { enhancementFactor } from '../../server/src/physics/air/enhancement.ts';
import type { AirState } from '../../server/src/physics/air/moist-air.ts';
import { partialsOfDewPointAt, partialsOfVapourPressure } from '../../server/src/physics/air/partials.ts';
import * as quantities from '../../server/src/physics/air/quantities.ts';
import { saturation, saturationPressure } from '../../server/src/physics/air/saturation.ts';
import { airState } from '../../server/src/physics/air/state.ts';
import * as vapourPressure from '../../server/src/physics/air/vapour-pressure.ts';
import { wetBulb, wetBulbOver, wetBulbPartials } from '../../server/src/physics/air/wet-bulb.ts';
import { conductorOf } from '../../server/src/physics/electrical/conductors.ts';
import { cableLoopResistance, resistiveConductance } from '../../server/src/physics/electrical/supply-cable.ts';
import { headConductance } from '../../server/src/physics/heat/head-conductance.ts';
import {
  grashofNumber,
  reynoldsNumber,
  verticalCylinderNusselt,
  verticalPlateNusselt,
} from '../../server/src/physics/heat/heat-transfer.ts';
import { timeConstantAtSpeed } from '../../server/src/physics/heat/lag.ts';
import { wakeWarming } from '../../server/src/physics/heat/plume.ts';
import { radiationError, radiativeCoefficient } from '../../server/src/physics/heat/radiation.ts';
import { insertionNeeded } from '../../server/src/physics/heat/stem-conduction.ts';

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

/** Air of 1 atm. */
function air(celsius: number, relativeHumidity: number): AirState {
  const state = airState(celsius, 101_325, { quantity: 'relative-humidity', value: relativeHumidity });
  if (!state.ok) throw new Error('no such air');
  return state.value;
}

const ROOM = air(20, 0.5);
const COLD = air(-10, 0.5);
const DRY = air(5, 0.2);
const WARM = air(25, 0.5);
const HALF_SQUARE_MILLIMETRE = conductorOf(0.5e-6);

it.each([
  ['relative humidity over ice', 0.551, 3, () => valueIfOk(quantities.relativeHumidityOverIce(COLD))],
  ['dew point, °C', 9.28, 2, () => valueIfOk(quantities.dewPoint(ROOM))],
  ['frost point, °C', -16.54, 2, () => valueIfOk(quantities.frostPoint(COLD))],
  ['dew-point depression, K', 10.72, 2, () => valueIfOk(quantities.dewPointDepression(ROOM))],
  ['specific humidity, kg/kg', 0.00724, 5, () => quantities.specificHumidity(ROOM)],
  ['volume fraction', 0.01159, 5, () => quantities.volumeFraction(ROOM)],
  ['vapour pressure deficit, Pa', 1174.26, 2, () => quantities.vapourPressureDeficit(ROOM)],
  [
    'from %RH over ice, Pa',
    130.46,
    2,
    () => vapourPressure.vapourPressureFromRelativeHumidityOverIce(0.5, -10, 101_325),
  ],
  ['from a frost point, Pa', 260.92, 2, () => vapourPressure.vapourPressureFromFrostPoint(-10, 101_325)],
  ['from a specific humidity, Pa', 1619.29, 2, () => vapourPressure.vapourPressureFromSpecificHumidity(0.01, 101_325)],
  ['from a volume fraction, Pa', 1013.25, 2, () => vapourPressure.vapourPressureFromVolumeFraction(0.01, 101_325)],
  ['from an absolute humidity, Pa', 1352.95, 2, () => vapourPressure.vapourPressureFromAbsoluteHumidity(0.01, 20)],
  ['saturation pressure over ice, Pa', 259.87, 2, () => saturationPressure(-10, 'ice')],
  ['saturation slope over water, Pa/K', 144.91, 2, () => saturation(20, 'water').slope],
  ['enhancement factor over water', 1.003991, 6, () => enhancementFactor(20, 101_325, 'water')],
  ['enhancement factor over ice', 1.005004, 6, () => enhancementFactor(-40, 101_325, 'ice')],
  ['wet bulb over water, °C', -1.04, 2, () => wetBulbOver(DRY, 'water')],
  ['wet bulb over ice, °C', -1.42, 2, () => wetBulbOver(DRY, 'ice')],
  ['wet bulb per vapour pressure, K/Pa', 0.00513, 5, () => wetBulbPartials(WARM, wetBulb(WARM)).vapourPressure],
  ['wet bulb per air temperature', 0.335, 3, () => wetBulbPartials(WARM, wetBulb(WARM)).airCelsius],
  [
    'dew point of compressed air, K/Pa',
    0.0165,
    4,
    () => valueIfOk(partialsOfDewPointAt(ROOM, 810_600))?.vapourPressure,
  ],
  [
    'vapour pressure per K of the sensor, Pa/K',
    72.77,
    2,
    () => partialsOfVapourPressure(0.5, 20, 101_325).sensorCelsius,
  ],
  ['radiation of cleaned steel at 60 °C, W/(m²·K)', 1.85, 2, () => radiativeCoefficient(0.22, 60)],
  ['specific heat of air at 26.85 °C, J/(kg·K)', 1004.8, 1, () => dryAirProperties(26.85, 101_325).specificHeat],
  ['conductance of 4 W at 24 V, S', 0.00694, 5, () => resistiveConductance(4, 24)],
  [
    'supply cable out and back, ohm',
    5.23,
    2,
    () => cableLoopResistance(HALF_SQUARE_MILLIMETRE, { length: 60, celsius: 50 }),
  ],
] as const)('%s: %f to %i decimals', (_, stated, decimals, compute) => {
  expect(compute()).toBeCloseTo(stated, decimals);
});

it('Incropera, examples 7.4 and 9.2: the Reynolds and Grashof numbers as printed', () => {
  expect(Math.round(reynoldsNumber(10, 0.0127, { ...AIR, kinematicViscosity: 20.92e-6 }))).toBe(6071);
  const door = { ...AIR, kinematicViscosity: 26.4e-6, thermalExpansion: 0.0025 };
  expect(grashofNumber(0.71, 209, door) / 1e9).toBeCloseTo(2.63, 2);
});
