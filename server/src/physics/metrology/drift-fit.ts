/** A drift fitted by least squares: what an error has grown to over time, how well that is known, and what comes next. */
import type { Formula } from '../formula.ts';

/** An error, or a change of it, that was read after some time. Times and values are in any unit, the same for all. */
export interface DriftReading {
  readonly elapsed: number;
  readonly value: number;
  /** Above zero where it is known. */
  readonly standardUncertainty?: number;
}

/** The two powers of the elapsed time that a fit is made of. */
export type DriftPowers = readonly [number, number];

/** A straight line: where the error starts, and how fast it grows. */
const STRAIGHT_LINE: DriftPowers = [0, 1];

export interface DriftFit {
  readonly powers: DriftPowers;
  readonly coefficients: readonly [number, number];
  readonly variances: readonly [number, number];
  readonly covariance: number;
  /** Standard deviation of one reading from the fit. */
  readonly scatter: number;
  /** True where the uncertainties of all readings are known. */
  readonly isWeighted: boolean;
  /** Of the variances; undefined where they are without limit, since the scatter adds nothing to known uncertainties. */
  readonly degreesOfFreedom: number | undefined;
}

/** Where a fit lies at a time. */
export interface FittedDrift {
  readonly value: number;
  /** Standard uncertainty of the fit itself. */
  readonly standardUncertainty: number;
  /** Standard uncertainty of one further reading there: the fit's and the scatter together. */
  readonly readingUncertainty: number;
}

/** Σ ((x - a - b t)/u)² least; u² of a and b from the same sums, times χ²/ν where that is above 1 */
export const WEIGHTED_LEAST_SQUARES: Formula = {
  id: 'weighted-least-squares',
  title: 'Line of least squares, weighted by the uncertainties',
  source: 'JCGM 100:2008, H.3; the weights and χ²/ν (Birge ratio) are common practice',
  validity: [],
};

/** Of the determinant against its terms: below it the times are one and the same but for rounding. */
const LEAST_SPREAD = 1e-12;

/**
 * Fits value = c₁·t^p₁ + c₂·t^p₂ by least squares.
 *
 * Readings whose uncertainties are all known weigh 1/u²; where they scatter more than these say, χ²/ν above 1, the
 * scatter counts. Otherwise all weigh the same and the residuals alone tell the uncertainties, with n − 2 degrees of
 * freedom. What scatter adds to known uncertainties has as few, and the sum of both the effective degrees of freedom of
 * Welch and Satterthwaite, JCGM 100 eq. G.2b.
 *
 * Worked value (JCGM 100 H.3): the thermometer of table H.6 has a −0.1712 and b 0.00218 with standard uncertainties
 * 0.0029 and 0.00067.
 *
 * @returns undefined below three readings, and where all were made at the same time
 */
export function fitDrift(readings: readonly DriftReading[], powers: DriftPowers = STRAIGHT_LINE): DriftFit | undefined {
  const freedom = readings.length - 2;
  if (freedom < 1) return undefined;
  const isWeighted = readings.every(({ standardUncertainty = 0 }) => standardUncertainty > 0);
  const terms = readings.map(({ elapsed, value, standardUncertainty = 1 }) => ({
    first: elapsed ** powers[0],
    second: elapsed ** powers[1],
    value,
    weight: isWeighted ? standardUncertainty ** -2 : 1,
  }));
  const sum = (of: (term: (typeof terms)[number]) => number): number =>
    terms.reduce((total, term) => total + term.weight * of(term), 0);
  const squares = [sum(({ first }) => first ** 2), sum(({ second }) => second ** 2)] as const;
  const cross = sum(({ first, second }) => first * second);
  const determinant = squares[0] * squares[1] - cross ** 2;
  if (!(determinant > LEAST_SPREAD * squares[0] * squares[1])) return undefined;
  const products = [sum(({ first, value }) => first * value), sum(({ second, value }) => second * value)] as const;
  const coefficients = [
    (squares[1] * products[0] - cross * products[1]) / determinant,
    (squares[0] * products[1] - cross * products[0]) / determinant,
  ] as const;
  const residuals = sum(
    ({ first, second, value }) => (value - coefficients[0] * first - coefficients[1] * second) ** 2,
  );
  const perWeight = isWeighted ? Math.max(1, residuals / freedom) : residuals / freedom;
  return {
    powers,
    coefficients,
    variances: [(perWeight * squares[1]) / determinant, (perWeight * squares[0]) / determinant],
    covariance: (-perWeight * cross) / determinant,
    scatter: Math.sqrt((perWeight * readings.length) / sum(() => 1)),
    isWeighted,
    degreesOfFreedom: isWeighted ? effectiveFreedom(perWeight, freedom) : freedom,
  };
}

/** Of a variance of 1 that is known and of what scatter has added to it. */
function effectiveFreedom(variance: number, freedom: number): number | undefined {
  return variance > 1 ? freedom * (variance / (variance - 1)) ** 2 : undefined;
}

/**
 * The fit and its uncertainty at a time: u² = u₁²·t^2p₁ + u₂²·t^2p₂ + 2·cov·t^(p₁+p₂), JCGM 100 eq. 16.
 *
 * Worked value (JCGM 100 H.3.4): the thermometer's correction at 30 °C is −0.1494 °C with standard uncertainty 0.0041 °C.
 */
export function driftAt(fit: DriftFit, elapsed: number): FittedDrift {
  const [first, second] = [elapsed ** fit.powers[0], elapsed ** fit.powers[1]];
  const variance = fit.variances[0] * first ** 2 + fit.variances[1] * second ** 2 + 2 * fit.covariance * first * second;
  const ofFit = Math.max(0, variance);
  return {
    value: fit.coefficients[0] * first + fit.coefficients[1] * second,
    standardUncertainty: Math.sqrt(ofFit),
    readingUncertainty: Math.sqrt(ofFit + fit.scatter ** 2),
  };
}
