/** Whether a first-order budget is good enough for a model, or the model bends too much over its uncertainties. */
import type { Formula } from '../formula.ts';

export interface UncertainInput {
  readonly estimate: number;
  readonly standardUncertainty: number;
}

/** A result from values in the order of the inputs; undefined where they are an impossible state. */
export type MeasurementModel = (values: readonly number[]) => number | undefined;

export interface LinearityCheck {
  /** JCGM 100 eq. 10. */
  readonly firstOrderUncertainty: number;
  /** With the terms of the note to JCGM 100, 5.1.2. */
  readonly secondOrderUncertainty: number;
  /** Expectation of the result less the model at the estimates: half the sum of f″·u². */
  readonly meanShift: number;
  /** Neither the uncertainty nor the result is off by more than 5 % of the uncertainty. */
  readonly isLinearEnough: boolean;
}

/** Part of the standard uncertainty that linearisation may be off by: one unit of its second figure. */
const NEGLIGIBLE_PART = 0.05;

/** Step of the differences, as part of each standard uncertainty: small against it, large against rounding. */
const STEP = 0.1;

/** u² = Σ (f'u)² + Σ Σ [f(ij)²/2 + f(i) f(ijj)] u(i)² u(j)² */
export const LINEARITY: Formula = {
  id: 'linearity-of-budget',
  title: 'Second-order terms of the propagation of uncertainty',
  source: 'JCGM 100:2008, 5.1.2, note; the limit of 5 % is a choice',
  validity: [],
};

/**
 * Compares first- and second-order propagation through a model with uncorrelated, symmetric inputs.
 *
 * Derivatives by central differences of a tenth of each standard uncertainty. Undefined where the model has no value
 * within two tenths of a standard uncertainty of the estimates.
 *
 * Worked value (JCGM 101, 9.4): x1² + x2² at (0.010, 0) with u 0.005: 100e-6 to first, 112e-6 to second order, mean
 * shifted by 50e-6: not linear enough.
 */
export function checkLinearity(model: MeasurementModel, inputs: readonly UncertainInput[]): LinearityCheck | undefined {
  let isDefined = true;
  const at = (...shifts: readonly Shift[]): number => {
    const values = inputs.map(({ estimate, standardUncertainty }, i) => {
      const steps = shifts.reduce((sum, shift) => sum + (shift.input === i ? shift.steps : 0), 0);
      return estimate + steps * STEP * standardUncertainty;
    });
    const result = model(values);
    isDefined &&= Number.isFinite(result);
    return result ?? 0;
  };

  const first = inputs.map((_, i) => (at(up(i)) - at(down(i))) / (2 * STEP));
  const firstOrderVariance = first.reduce((sum, slope) => sum + slope ** 2, 0);
  let secondOrderVariance = firstOrderVariance;
  let meanShift = 0;
  for (const [i, slope] of first.entries()) {
    for (const j of inputs.keys()) {
      const bend = curvature(at, i, j);
      if (i === j) meanShift += bend / 2;
      secondOrderVariance += bend ** 2 / 2 + slope * changeOfCurvature(at, i, j);
    }
  }
  if (!isDefined) return undefined;
  const firstOrderUncertainty = Math.sqrt(firstOrderVariance);
  const secondOrderUncertainty = Math.sqrt(Math.max(0, secondOrderVariance));
  const permitted = NEGLIGIBLE_PART * secondOrderUncertainty;
  const isLinearEnough =
    Math.abs(secondOrderUncertainty - firstOrderUncertainty) <= permitted && Math.abs(meanShift) <= permitted;
  return { firstOrderUncertainty, secondOrderUncertainty, meanShift, isLinearEnough };
}

/** One input moved by a number of steps. */
interface Shift {
  readonly input: number;
  readonly steps: number;
}

type ModelNearEstimates = (...shifts: readonly Shift[]) => number;

function up(input: number): Shift {
  return { input, steps: 1 };
}

function down(input: number): Shift {
  return { input, steps: -1 };
}

// The derivatives below are those of the model with every input measured in its own standard uncertainty.

/** ∂²f/∂i∂j */
function curvature(at: ModelNearEstimates, i: number, j: number): number {
  const risen = at(up(i), up(j)) - at(up(i), down(j));
  const fallen = at(down(i), up(j)) - at(down(i), down(j));
  return (risen - fallen) / (4 * STEP ** 2);
}

/** ∂³f/∂i∂j² */
function changeOfCurvature(at: ModelNearEstimates, i: number, j: number): number {
  const risen = at(up(i), up(j)) - 2 * at(up(i)) + at(up(i), down(j));
  const fallen = at(down(i), up(j)) - 2 * at(down(i)) + at(down(i), down(j));
  return (risen - fallen) / (2 * STEP ** 3);
}
