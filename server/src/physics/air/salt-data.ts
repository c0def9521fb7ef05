/**
 * Twelve saturated salt solutions as humidity fixed points. All numbers in %RH and °C, as their tables print them.
 *
 * Humidities: the polynomials of Greenspan 1977, where their coefficients are known; otherwise a table that is
 * interpolated in straight lines. Expanded uncertainties (coverage 2): OIML R 121:1996 table 1, given here where they
 * change; for salts that it leaves out, and for LiCl at 20 °C, those of Greenspan 1977 table 2, from memory.
 */

/** The salts, by the spelling of their formula. */
export type SaltId =
  | 'LiCl'
  | 'CH3COOK'
  | 'MgCl2'
  | 'K2CO3'
  | 'Mg(NO3)2'
  | 'NaBr'
  | 'KI'
  | 'NaCl'
  | '(NH4)2SO4'
  | 'KCl'
  | 'KNO3'
  | 'K2SO4';

/** Values in %RH at temperatures in °C that run from cold to warm; both lists are equally long. */
export interface SaltTable {
  readonly celsius: readonly number[];
  readonly percent: readonly number[];
}

export interface SaltData {
  readonly name: string;
  /** Coefficients of the powers of the temperature in °C, or a table to interpolate; both give %RH. */
  readonly humidity:
    | { readonly kind: 'polynomial'; readonly coefficients: readonly number[] }
    | { readonly kind: 'table'; readonly table: SaltTable };
  /** Expanded uncertainty in %RH. Its first and last temperatures are also those between which the salt is valid. */
  readonly uncertainty: SaltTable;
  readonly source: string;
}

const GREENSPAN = 'Greenspan, J. Res. NBS 81A (1977) 89';
const OIML = 'OIML R 121:1996, table 1';

export const SALT_DATA: Readonly<Record<SaltId, SaltData>> = {
  // Below about 20 °C another hydrate forms and the literature scatters from 11 to 14 %RH (OIML R 121, footnotes).
  LiCl: {
    name: 'lithium chloride',
    humidity: { kind: 'polynomial', coefficients: [11.2323, 0.00824245, -0.21489e-3] },
    uncertainty: { celsius: [20, 25, 55, 70, 75, 80], percent: [0.31, 0.3, 0.3, 0.4, 0.4, 0.5] },
    source: `${GREENSPAN}; uncertainty ${OIML}, at 20 °C Greenspan table 2 from memory`,
  },
  // The digits of the last coefficient are from memory; a variant read elsewhere differs by under 0.006 %RH to 30 °C.
  CH3COOK: {
    name: 'potassium acetate',
    humidity: { kind: 'polynomial', coefficients: [22.4388, 0.156288, -0.612868e-2] },
    uncertainty: { celsius: [10, 15, 20, 25, 30], percent: [0.6, 0.4, 0.3, 0.4, 0.6] },
    source: `${GREENSPAN}, last coefficient from memory; uncertainty ${OIML}`,
  },
  MgCl2: {
    name: 'magnesium chloride',
    humidity: { kind: 'polynomial', coefficients: [33.6686, -0.00797397, -0.108988e-2] },
    uncertainty: { celsius: [5, 15, 20, 55, 70, 75, 80], percent: [0.3, 0.3, 0.2, 0.2, 0.3, 0.3, 0.4] },
    source: `${GREENSPAN}; uncertainty ${OIML}`,
  },
  K2CO3: {
    name: 'potassium carbonate',
    humidity: { kind: 'polynomial', coefficients: [43.1315, 0.00147523] },
    uncertainty: { celsius: [5, 10, 25, 30], percent: [0.5, 0.4, 0.4, 0.5] },
    source: `${GREENSPAN}; uncertainty ${OIML}`,
  },
  'Mg(NO3)2': {
    name: 'magnesium nitrate',
    humidity: { kind: 'polynomial', coefficients: [60.3514, -0.298153] },
    uncertainty: {
      celsius: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50],
      percent: [0.43, 0.33, 0.27, 0.23, 0.22, 0.24, 0.29, 0.37, 0.47, 0.6],
    },
    source: `${GREENSPAN}; uncertainty its table 2, from memory`,
  },
  // Above 55 °C the rows of the table lie too far apart for straight lines.
  NaBr: {
    name: 'sodium bromide',
    humidity: {
      kind: 'table',
      table: {
        celsius: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55],
        percent: [63.5, 62.2, 60.7, 59.1, 57.6, 56.0, 54.6, 53.2, 52.0, 50.9, 50.2],
      },
    },
    uncertainty: {
      celsius: [5, 10, 15, 20, 25, 35, 40, 45, 50, 55],
      percent: [0.8, 0.6, 0.6, 0.5, 0.4, 0.4, 0.5, 0.5, 0.6, 0.7],
    },
    source: `${OIML} (after Greenspan 1977), interpolated: the coefficients of the polynomial were not at hand`,
  },
  KI: {
    name: 'potassium iodide',
    humidity: { kind: 'polynomial', coefficients: [74.5462, -0.253437, 0.105097e-2] },
    uncertainty: { celsius: [5, 10, 15, 50, 55, 70, 75, 80], percent: [0.4, 0.4, 0.3, 0.3, 0.4, 0.4, 0.5, 0.5] },
    source: `${GREENSPAN}, coefficients from memory, within 0.04 %RH of ${OIML}; uncertainty from there`,
  },
  // Above 45 °C the polynomial turns upwards, away from the later measurements that OIML R 121 adopts.
  NaCl: {
    name: 'sodium chloride',
    humidity: { kind: 'polynomial', coefficients: [75.5164, 0.0398321, -0.265459e-2, 0.2848e-4] },
    uncertainty: { celsius: [5, 10, 15, 45], percent: [0.3, 0.3, 0.2, 0.2] },
    source: `${GREENSPAN}; uncertainty ${OIML}`,
  },
  '(NH4)2SO4': {
    name: 'ammonium sulfate',
    humidity: {
      kind: 'table',
      table: { celsius: [5, 10, 15, 20, 25, 30, 40], percent: [82.42, 82.06, 81.7, 81.34, 80.99, 80.63, 79.91] },
    },
    uncertainty: { celsius: [5, 10, 15, 20, 25, 30, 40], percent: [0.68, 0.51, 0.38, 0.31, 0.28, 0.3, 0.5] },
    source: `${GREENSPAN}, table 2 from memory, interpolated between its values`,
  },
  KCl: {
    name: 'potassium chloride',
    humidity: { kind: 'polynomial', coefficients: [88.619, -0.19334, 0.899706e-3] },
    uncertainty: {
      celsius: [5, 10, 15, 20, 45, 50, 55, 70, 75, 80],
      percent: [0.5, 0.4, 0.4, 0.3, 0.3, 0.4, 0.4, 0.6, 0.7, 0.8],
    },
    source: `${GREENSPAN}; uncertainty ${OIML}`,
  },
  KNO3: {
    name: 'potassium nitrate',
    humidity: { kind: 'polynomial', coefficients: [96.3361, 0.0112371, -0.484514e-2] },
    uncertainty: {
      celsius: [5, 10, 15, 20, 25, 30, 35, 40, 45, 50],
      percent: [2.1, 1.4, 0.96, 0.66, 0.55, 0.6, 0.83, 1.2, 1.8, 2.5],
    },
    source: `${GREENSPAN}; uncertainty its table 2, from memory`,
  },
  K2SO4: {
    name: 'potassium sulfate',
    humidity: { kind: 'polynomial', coefficients: [98.7792, -0.0590502] },
    uncertainty: { celsius: [5, 10, 15, 20, 25, 30, 45, 50], percent: [1, 0.8, 0.7, 0.6, 0.5, 0.4, 0.4, 0.5] },
    source: `${GREENSPAN}; uncertainty ${OIML}`,
  },
};
