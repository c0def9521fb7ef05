/**
 * Dimensions of values in the files, each with its units. Inside the program every value is in the canonical
 * unit: °C for temperatures, fractions for humidity and percentages, SI for everything else.
 */
export type Dimension =
  | 'temperature'
  | 'temperature-difference'
  | 'relative-humidity'
  | 'pressure'
  | 'length'
  | 'area'
  | 'speed'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'power'
  | 'time'
  | 'mixing-ratio'
  | 'absolute-humidity'
  | 'volume-fraction'
  | 'specific-enthalpy'
  | 'temperature-rate'
  | 'temperature-gradient'
  | 'humidity-drift'
  | 'temperature-drift'
  | 'percentage';

export interface Unit {
  readonly symbol: string;
  /** Other spellings that are read the same way. */
  readonly aliases: readonly string[];
  /** canonical value = number × factor + offset */
  readonly factor: number;
  readonly offset: number;
  /** Calendar units: how many months one of them is. */
  readonly months?: number;
}

export interface DimensionInfo {
  /** The words a sentence uses: 'a temperature'. */
  readonly words: string;
  /** The first unit is the usual one: most values are shown in it. */
  readonly units: readonly [Unit, ...Unit[]];
  /** The least canonical value that can exist, where there is one. */
  readonly least?: number;
  /** The greatest canonical value that makes sense in these files: a number beyond it is a slip. */
  readonly most?: number;
  /** Text that shows a person how such a value is written. */
  readonly example: string;
}

const KELVIN_OFFSET = 273.15;
/** Of the Gregorian calendar, in the mean. */
export const YEAR_SECONDS = 365.2425 * 86_400;
/** The international pound under standard gravity, on a square inch. */
const PSI_PASCALS = (0.45359237 * 9.80665) / 0.0254 ** 2;

function unit(symbol: string, factor: number, aliases: readonly string[] = [], offset = 0): Unit {
  return { symbol, aliases, factor, offset };
}

const PERCENT_RH = unit('%RH', 0.01, ['%']);

export const DIMENSIONS: Readonly<Record<Dimension, DimensionInfo>> = {
  temperature: {
    words: 'a temperature',
    units: [unit('degC', 1, ['°C']), unit('degF', 5 / 9, ['°F'], (-32 * 5) / 9), unit('K', 1, [], -KELVIN_OFFSET)],
    least: -KELVIN_OFFSET,
    most: 1000,
    example: '60 degC',
  },
  'temperature-difference': {
    words: 'a temperature difference',
    units: [unit('K', 1)],
    most: 250,
    example: '2 K',
  },
  'relative-humidity': {
    words: 'a relative humidity',
    units: [PERCENT_RH],
    least: 0,
    most: 10,
    example: '85 %RH',
  },
  pressure: {
    words: 'a pressure',
    units: [
      unit('kPa', 1e3),
      unit('Pa', 1),
      unit('hPa', 100),
      unit('mbar', 100),
      unit('bar', 1e5),
      unit('MPa', 1e6),
      unit('psi', PSI_PASCALS),
    ],
    least: 0,
    most: 1e8,
    example: '99 kPa',
  },
  length: {
    words: 'a length',
    units: [unit('mm', 1e-3), unit('cm', 1e-2), unit('m', 1)],
    most: 1e5,
    example: '120 mm',
  },
  area: { words: 'a cross-section', units: [unit('mm2', 1e-6, ['mm²'])], least: 0, most: 1e-2, example: '0.5 mm2' },
  speed: { words: 'an air speed', units: [unit('m/s', 1)], least: 0, most: 300, example: '2 m/s' },
  voltage: { words: 'a voltage', units: [unit('V', 1), unit('mV', 1e-3)], least: 0, most: 1e5, example: '24 V' },
  current: { words: 'a current', units: [unit('mA', 1e-3), unit('A', 1)], least: 0, most: 1e3, example: '21 mA' },
  resistance: {
    words: 'a resistance',
    units: [unit('ohm', 1, ['Ω']), unit('kohm', 1e3)],
    least: 0,
    most: 1e9,
    example: '250 ohm',
  },
  power: { words: 'a power', units: [unit('W', 1), unit('mW', 1e-3)], least: 0, most: 1e5, example: '4 W' },
  time: {
    words: 'a time',
    units: [
      unit('s', 1),
      unit('ms', 1e-3),
      unit('min', 60),
      unit('h', 3600),
      unit('d', 86_400),
      { ...unit('months', YEAR_SECONDS / 12, ['month']), months: 1 },
      { ...unit('years', YEAR_SECONDS, ['year']), months: 12 },
    ],
    least: 0,
    most: 1e10,
    example: '60 s',
  },
  'mixing-ratio': {
    words: 'a humidity content',
    units: [unit('g/kg', 1e-3), unit('kg/kg', 1)],
    least: 0,
    most: 100,
    example: '40 g/kg',
  },
  'absolute-humidity': {
    words: 'an absolute humidity',
    units: [unit('g/m3', 1e-3, ['g/m³'])],
    least: 0,
    most: 100,
    example: '30 g/m3',
  },
  'volume-fraction': {
    words: 'a volume fraction',
    units: [unit('ppmv', 1e-6)],
    least: 0,
    most: 1,
    example: '2000 ppmv',
  },
  'specific-enthalpy': {
    words: 'a specific enthalpy',
    units: [unit('kJ/kg', 1e3), unit('J/kg', 1)],
    most: 1e8,
    example: '120 kJ/kg',
  },
  'temperature-rate': {
    words: 'a rate of temperature',
    units: [unit('K/min', 1 / 60), unit('K/h', 1 / 3600)],
    most: 100,
    example: '0.5 K/min',
  },
  'temperature-gradient': { words: 'a temperature gradient', units: [unit('K/m', 1)], most: 1e4, example: '0.8 K/m' },
  'humidity-drift': {
    words: 'a drift of relative humidity',
    units: [unit('%RH/year', 0.01 / YEAR_SECONDS, ['%/year'])],
    example: '0.5 %RH/year',
  },
  'temperature-drift': {
    words: 'a drift of temperature',
    units: [unit('K/year', 1 / YEAR_SECONDS)],
    example: '0.05 K/year',
  },
  percentage: { words: 'a percentage', units: [unit('%', 0.01)], least: 0, most: 100, example: '0.1 %' },
};

/** The unit of a dimension that a symbol means, or undefined. */
export function unitOf(dimension: Dimension, symbol: string): Unit | undefined {
  return DIMENSIONS[dimension].units.find((unit) => unit.symbol === symbol || unit.aliases.includes(symbol));
}

export function canonical(number: number, unit: Unit): number {
  return number * unit.factor + unit.offset;
}

/** The number of a canonical value in a unit. */
export function inUnit(value: number, { factor, offset }: Unit): number {
  return (value - offset) / factor;
}

/** Every dimension in which a symbol means something. */
export function dimensionsOf(symbol: string): readonly Dimension[] {
  return (Object.keys(DIMENSIONS) as Dimension[]).filter((dimension) => unitOf(dimension, symbol) !== undefined);
}
