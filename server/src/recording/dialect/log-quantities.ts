/** What a column of a log may hold, by the keys of `log-columns`, and how such columns are usually named. */
import type { LogColumnKey } from '../../evaluate/recorded/answer.ts';
import { DIMENSIONS, type Dimension, unitOf } from '../../quantity/dimension.ts';

export type LogQuantity = keyof typeof TABLE;

interface LogQuantityInfo {
  readonly dimension: Dimension;
  /** The unit where a column's name has none: that of the schema's page. */
  readonly usual: string;
  /** The names that loggers give such a column, in small letters without anything between them. */
  readonly names: RegExp;
  /** Canonical values that it usually has: with others, a column without a unit in its name may be in another one. */
  readonly plausible: readonly [low: number, high: number];
}

const TABLE = {
  'air-temperature': {
    dimension: 'temperature',
    usual: 'degC',
    names: /^(t|ta|tdry|tair|tdb|(air|dry|drybulb)?temp(erature?)?|drybulb|lufttemperatur)$/,
    plausible: [-100, 400],
  },
  'dew-point': {
    dimension: 'temperature',
    usual: 'degC',
    names: /^(td|tdp|tdew|dp|dewpoint(temp(erature)?)?|taupunkt)$/,
    plausible: [-110, 200],
  },
  'relative-humidity': {
    dimension: 'relative-humidity',
    usual: '%RH',
    names: /^(rh|rf|hr|ur|u|phi|hum|humidity|rel(ative)?hum(idity)?|(rel(ative)?)?feuchte)$/,
    plausible: [0, 1.1],
  },
  'frost-point': {
    dimension: 'temperature',
    usual: 'degC',
    names: /^(tf|tfrost|fp|frostpoint|reifpunkt)$/,
    plausible: [-110, 1],
  },
  'vapour-pressure': {
    dimension: 'pressure',
    usual: 'hPa',
    names: /^(e|ea|pv|pw|vapou?rpressure|dampfdruck)$/,
    plausible: [0, 2e6],
  },
  'mixing-ratio': {
    dimension: 'mixing-ratio',
    usual: 'g/kg',
    names: /^(r|x|w|mr|mixingratio|humidityratio)$/,
    plausible: [0, 10],
  },
  'absolute-humidity': {
    dimension: 'absolute-humidity',
    usual: 'g/m3',
    names: /^(a|ah|dv|abs(olute)?hum(idity)?|absolutefeuchte)$/,
    plausible: [0, 2],
  },
  'dew-point-depression': {
    dimension: 'temperature-difference',
    usual: 'K',
    names: /^(dtd|ttd|depression|dewpointdepression)$/,
    plausible: [-2, 200],
  },
  'wet-bulb': {
    dimension: 'temperature',
    usual: 'degC',
    names: /^(tw|twb|twet|wetbulb(temp(erature)?)?)$/,
    plausible: [-100, 120],
  },
  pressure: {
    dimension: 'pressure',
    usual: 'kPa',
    names: /^(p|pabs|pair|pressure|(air|absolute|barometric)pressure|baro(meter)?|luftdruck)$/,
    plausible: [3e4, 3e5],
  },
  speed: {
    dimension: 'speed',
    usual: 'm/s',
    names: /^(v|vair|(air|wind)?speed|(air)?velocity)$/,
    plausible: [-100, 100],
  },
} as const satisfies Record<Exclude<LogColumnKey, 'time'>, LogQuantityInfo>;

export const LOG_QUANTITIES = Object.keys(TABLE) as readonly LogQuantity[];

/** Where a log has several humidities, the first of these is used: those that do not hang on the air temperature first. */
export const LOG_HUMIDITIES = [
  'dew-point',
  'frost-point',
  'vapour-pressure',
  'mixing-ratio',
  'relative-humidity',
  'absolute-humidity',
  'dew-point-depression',
  'wet-bulb',
] as const satisfies readonly LogQuantity[];

export type LogHumidity = (typeof LOG_HUMIDITIES)[number];

export function logQuantity(name: LogQuantity): LogQuantityInfo {
  return TABLE[name];
}

/** A unit of a column: canonical value = number × factor + offset. */
export interface ColumnUnit {
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
}

/** Relative humidity as a fraction of 1, which files of ours do not use. */
const FRACTION: ColumnUnit = { symbol: '1', factor: 1, offset: 0 };

/** Spellings of loggers that files of ours do not use. */
const OTHER_SPELLINGS: Readonly<Record<string, string>> = {
  c: 'degC',
  degc: 'degC',
  celsius: 'degC',
  f: 'degF',
  degf: 'degF',
  fahrenheit: 'degF',
  k: 'K',
  pct: '%RH',
  percent: '%RH',
  '%rh': '%RH',
  '% rh': '%RH',
  '%rf': '%RH',
  '% rf': '%RH',
  hpa: 'hPa',
  kpa: 'kPa',
  pa: 'Pa',
  mps: 'm/s',
};

export function columnUnit(dimension: Dimension, spelling: string): ColumnUnit | undefined {
  if (dimension === 'relative-humidity' && spelling === FRACTION.symbol) return FRACTION;
  return unitOf(dimension, spelling) ?? unitOf(dimension, OTHER_SPELLINGS[spelling.toLowerCase()] ?? '');
}

/** Every unit that a column of a quantity may have, each once. */
export function columnUnits(name: LogQuantity): readonly ColumnUnit[] {
  const { dimension } = TABLE[name];
  const units = DIMENSIONS[dimension].units.filter(({ symbol }) => symbol !== 'mbar'); // the same as hPa
  return dimension === 'relative-humidity' ? [...units, FRACTION] : units;
}
