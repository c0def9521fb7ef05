import { describe, expect, it } from 'vitest';
import { SALT_DATA, type SaltId } from '../../../server/src/physics/air/salt-data.ts';
import { SALT_IDS, saltFormula, saltHumidity, saltName } from '../../../server/src/physics/air/saturated-salts.ts';
import { centralDifference } from '../numeric.ts';

const percentOver = (salt: SaltId, celsius: number): number => {
  const found = saltHumidity(salt, celsius);
  if (!found.ok) throw new Error(`${salt} at ${celsius} °C: ${found.problem.argument}`);
  return found.value.relativeHumidity * 100;
};

const uncertaintyOver = (salt: SaltId, celsius: number): number => {
  const found = saltHumidity(salt, celsius);
  return found.ok ? found.value.expandedUncertainty * 100 : Number.NaN;
};

/** OIML R 121:1996 table 1, %RH and its uncertainty. Column by column; left out: LiCl under 25 °C and NaCl over 45 °C. */
const OIML_R_121: Partial<Record<SaltId, readonly (readonly [number, number, number])[]>> = {
  LiCl: [
    [25, 11.3, 0.3],
    [30, 11.3, 0.3],
    [35, 11.3, 0.3],
    [40, 11.2, 0.3],
    [50, 11.1, 0.3],
    [55, 11, 0.3],
    [70, 10.8, 0.4],
    [80, 10.5, 0.5],
  ],
  CH3COOK: [
    [10, 23.4, 0.6],
    [15, 23.4, 0.4],
    [20, 23.1, 0.3],
    [25, 22.5, 0.4],
    [30, 21.6, 0.6],
  ],
  MgCl2: [
    [5, 33.6, 0.3],
    [10, 33.5, 0.3],
    [15, 33.3, 0.3],
    [20, 33.1, 0.2],
    [25, 32.8, 0.2],
    [30, 32.4, 0.2],
    [40, 31.6, 0.2],
    [50, 30.5, 0.2],
    [70, 27.8, 0.3],
    [80, 26.1, 0.4],
  ],
  K2CO3: [
    [5, 43.1, 0.5],
    [10, 43.1, 0.4],
    [15, 43.2, 0.4],
    [20, 43.2, 0.4],
    [25, 43.2, 0.4],
    [30, 43.2, 0.5],
  ],
  NaBr: [
    [5, 63.5, 0.8],
    [10, 62.2, 0.6],
    [20, 59.1, 0.5],
    [25, 57.6, 0.4],
    [40, 53.2, 0.5],
    [55, 50.2, 0.7],
  ],
  KI: [
    [5, 73.3, 0.4],
    [10, 72.1, 0.4],
    [15, 71, 0.3],
    [20, 69.9, 0.3],
    [25, 68.9, 0.3],
    [30, 67.9, 0.3],
    [40, 66.1, 0.3],
    [50, 64.5, 0.3],
    [70, 61.9, 0.4],
    [80, 61, 0.5],
  ],
  NaCl: [
    [5, 75.7, 0.3],
    [10, 75.7, 0.3],
    [15, 75.6, 0.2],
    [20, 75.5, 0.2],
    [25, 75.3, 0.2],
    [30, 75.1, 0.2],
    [35, 74.9, 0.2],
    [40, 74.7, 0.2],
    [45, 74.5, 0.2],
  ],
  KCl: [
    [5, 87.7, 0.5],
    [10, 86.8, 0.4],
    [15, 85.9, 0.4],
    [20, 85.1, 0.3],
    [30, 83.6, 0.3],
    [40, 82.3, 0.3],
    [50, 81.2, 0.4],
    [70, 79.5, 0.6],
    [80, 78.9, 0.8],
  ],
  K2SO4: [
    [5, 98.5, 1],
    [10, 98.2, 0.8],
    [15, 97.9, 0.7],
    [20, 97.6, 0.6],
    [25, 97.3, 0.5],
    [30, 97, 0.4],
    [40, 96.4, 0.4],
    [50, 95.8, 0.5],
  ],
};

describe.each(Object.entries(OIML_R_121) as [SaltId, readonly (readonly [number, number, number])[]][])(
  'OIML R 121:1996 table 1, %s',
  (salt, rows) => {
    it('humidity within the rounding of the table, 0.05 %RH, and 0.01 for its source', () => {
      for (const [celsius, published] of rows) {
        expect(Math.abs(percentOver(salt, celsius) - published), `${celsius} °C`).toBeLessThan(0.061);
      }
    });

    it('uncertainty as printed', () => {
      for (const [celsius, , published] of rows) {
        expect(uncertaintyOver(salt, celsius), `${celsius} °C`).toBeCloseTo(published, 10);
      }
    });
  },
);

it('OIML R 121 prints 84.2 for KCl at 25 °C, which stands apart: Greenspan 1977 gives 84.34, and so does this', () => {
  expect(Math.abs(percentOver('KCl', 25) - 84.34)).toBeLessThan(0.011);
});

/** Greenspan 1977 table 2, %RH. Printed values are cut off, not rounded, at 0.01. */
it.each([
  [
    'NaCl',
    [
      [15, 75.61],
      [20, 75.47],
      [25, 75.29],
      [30, 75.09],
    ],
  ],
  [
    'MgCl2',
    [
      [15, 33.3],
      [20, 33.07],
      [25, 32.78],
      [30, 32.44],
    ],
  ],
] as const)('Greenspan 1977 table 2: %s, 4 temperatures, within 0.011 %RH', (salt, rows) => {
  for (const [celsius, published] of rows) {
    expect(Math.abs(percentOver(salt, celsius) - published), `${celsius} °C`).toBeLessThan(0.011);
  }
});

it.each([
  [
    'LiCl',
    [
      [20, 11.31],
      [25, 11.3],
    ],
  ],
  ['CH3COOK', [[20, 23.11]]],
  ['K2CO3', [[20, 43.16]]],
  [
    'Mg(NO3)2',
    [
      [20, 54.38],
      [25, 52.89],
    ],
  ],
  [
    'KCl',
    [
      [20, 85.11],
      [25, 84.34],
    ],
  ],
  [
    'KNO3',
    [
      [20, 94.62],
      [25, 93.58],
    ],
  ],
  [
    'K2SO4',
    [
      [20, 97.59],
      [25, 97.3],
    ],
  ],
  [
    '(NH4)2SO4',
    [
      [20, 81.34],
      [25, 80.99],
      [40, 79.91],
    ],
  ],
] as const)('Greenspan 1977 table 2 (from memory): %s within 0.011 %RH', (salt, rows) => {
  for (const [celsius, published] of rows) {
    expect(Math.abs(percentOver(salt, celsius) - published), `${celsius} °C`).toBeLessThan(0.011);
  }
});

it.each([
  ['NaCl', 69.2, 25],
  ['KCl', 49.38, 159],
  ['K2SO4', 86.75, 34],
  ['LiCl', 14.53, -75],
  ['MgCl2', 29.26, 34],
  ['Mg(NO3)2', 25.28, 220],
  ['NaBr', 20.49, 308],
  ['KI', 29.35, 254],
  ['(NH4)2SO4', 62.06, 79],
  ['KNO3', 43.22, 225],
] as const)('CRC Handbook, constant-humidity solutions, %s at 25 °C: within its stated 2 %', (salt, a, b) => {
  expect(Math.abs(percentOver(salt, 25) / (a * Math.exp(b / 298.15)) - 1)).toBeLessThan(0.02);
});

describe('valid temperatures', () => {
  it.each([
    ['LiCl', 15],
    ['NaCl', 50],
    ['CH3COOK', 35],
    ['K2CO3', 40],
    ['KNO3', 55],
    ['NaBr', 60],
  ] as const)('%s at %d °C is refused by the name of its formula', (salt, celsius) => {
    expect(saltHumidity(salt, celsius)).toEqual({
      ok: false,
      problem: { kind: 'outside-formula', formula: saltFormula(salt), argument: 'celsius', value: celsius },
    });
  });

  it('every salt is valid from 20 to 30 °C, where checks are made', () => {
    for (const salt of SALT_IDS) {
      for (const celsius of [20, 22.5, 25, 30])
        expect(saltHumidity(salt, celsius).ok, `${salt} ${celsius} °C`).toBe(true);
    }
  });
});

it('there are twelve salts, from dry to wet at 25 °C, each with its own name and formula', () => {
  expect(SALT_IDS).toHaveLength(12);
  const humidities = SALT_IDS.map((salt) => percentOver(salt, 25));
  expect(humidities).toEqual([...humidities].sort((a, b) => a - b));
  expect(new Set(SALT_IDS.map(saltName)).size).toBe(12);
  expect(new Set(SALT_IDS.map((salt) => saltFormula(salt).id)).size).toBe(12);
});

it('the change per K is the derivative of the humidity', () => {
  for (const salt of SALT_IDS) {
    const found = saltHumidity(salt, 22);
    const difference = centralDifference((celsius) => percentOver(salt, celsius) / 100, 22, 0.1);
    // Cubics over ±0.1 K: truncation under 1e-6 of a fraction per K.
    expect(found.ok && Math.abs(found.value.perCelsius - difference)).toBeLessThan(1e-6);
  }
});

it('every table has as many values as temperatures, which rise', () => {
  for (const salt of SALT_IDS) {
    const { humidity, uncertainty } = SALT_DATA[salt];
    for (const table of humidity.kind === 'table' ? [humidity.table, uncertainty] : [uncertainty]) {
      expect(table.percent).toHaveLength(table.celsius.length);
      expect(table.celsius).toEqual([...table.celsius].sort((a, b) => a - b));
    }
  }
});
