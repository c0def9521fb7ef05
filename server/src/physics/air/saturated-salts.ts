/** Relative humidity of the air over saturated salt solutions, the fixed points that probes are checked at. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { checkValidity, type Formula, type OutsideFormula } from '../formula.ts';
import { SALT_DATA, type SaltData, type SaltId, type SaltTable } from './salt-data.ts';

/** Every salt, from dry to wet. */
export const SALT_IDS = Object.keys(SALT_DATA) as readonly SaltId[];

/** Coverage factor of the uncertainties that the tables of salts print. */
export const SALT_COVERAGE = 2;

/** The air over a saturated salt solution. */
export interface SaltHumidity {
  /** Fraction, over water. */
  readonly relativeHumidity: number;
  /** Expanded uncertainty of it as a fraction, coverage factor `SALT_COVERAGE`. */
  readonly expandedUncertainty: number;
  /** Change of the relative humidity (fraction) per K of the solution's temperature. */
  readonly perCelsius: number;
  readonly formula: Formula;
}

/**
 * Relative humidity (fraction) over a saturated salt solution at its temperature in °C, with its expanded uncertainty
 * (coverage 2). Greenspan 1977, or where its polynomial is not at hand a published table interpolated in straight
 * lines, which costs at most 0.05 %RH; refused outside the temperatures that the salt is valid for (salt-data.ts).
 * Worked value: NaCl at 25 °C is 0.7530 ± 0.0020.
 */
export function saltHumidity(salt: SaltId, celsius: number): Outcome<SaltHumidity, OutsideFormula> {
  const formula = saltFormula(salt);
  const outside = checkValidity(formula, { celsius });
  if (outside !== undefined) return fail(outside);
  const data = SALT_DATA[salt];
  const { value, slope } = humidityPercent(data, celsius);
  return succeed({
    relativeHumidity: value / 100,
    expandedUncertainty: interpolated(data.uncertainty, celsius).value / 100,
    perCelsius: slope / 100,
    formula,
  });
}

/** The formula that stands for a salt: its source and the temperatures it is valid for. */
export function saltFormula(salt: SaltId): Formula {
  return SALT_FORMULAS[salt];
}

/** The name of a salt in words, such as 'sodium chloride'. */
export function saltName(salt: SaltId): string {
  return SALT_DATA[salt].name;
}

const SALT_FORMULAS = Object.fromEntries(SALT_IDS.map((salt) => [salt, formulaOf(salt, SALT_DATA[salt])])) as Readonly<
  Record<SaltId, Formula>
>;

function formulaOf(salt: SaltId, { name, uncertainty, source }: SaltData): Formula {
  const [coldest] = tabulatedAt(uncertainty, 0);
  const [warmest] = tabulatedAt(uncertainty, uncertainty.celsius.length - 1);
  return {
    id: `salt-${salt.toLowerCase().replaceAll(/[()]/g, '')}`,
    title: `Humidity over saturated ${name}`,
    source,
    validity: [{ argument: 'celsius', low: coldest, high: warmest, unit: 'degC' }],
  };
}

interface ValueAndSlope {
  readonly value: number;
  readonly slope: number;
}

function humidityPercent({ humidity }: SaltData, celsius: number): ValueAndSlope {
  if (humidity.kind === 'table') return interpolated(humidity.table, celsius);
  let value = 0;
  let slope = 0;
  for (const coefficient of humidity.coefficients.toReversed()) {
    slope = slope * celsius + value;
    value = value * celsius + coefficient;
  }
  return { value, slope };
}

/** Straight lines between the temperatures of a table, for a temperature within them. */
function interpolated(table: SaltTable, celsius: number): ValueAndSlope {
  const above = Math.max(
    1,
    table.celsius.findIndex((tabulated) => tabulated >= celsius),
  );
  const [lowCelsius, low] = tabulatedAt(table, above - 1);
  const [highCelsius, high] = tabulatedAt(table, above);
  const slope = (high - low) / (highCelsius - lowCelsius);
  return { value: low + slope * (celsius - lowCelsius), slope };
}

function tabulatedAt(table: SaltTable, index: number): readonly [celsius: number, percent: number] {
  const celsius = table.celsius[index];
  const percent = table.percent[index];
  if (celsius === undefined || percent === undefined) throw new RangeError(`the salt table has no row ${index}`);
  return [celsius, percent];
}
