/**
 * The budgets against the propagation of distributions by Monte Carlo (JCGM 101:2008), for the points of all fixtures
 * and samples. The measurement model is written down here once more, from the formulas alone.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../../server/src/analysis/file-location.ts';
import { Workspace } from '../../../server/src/analysis/workspace.ts';
import type { Budget, BudgetContribution } from '../../../server/src/evaluate/budget/budget.ts';
import { linearityOf } from '../../../server/src/evaluate/budget/linearity.ts';
import type { MeasuredInput } from '../../../server/src/evaluate/budget/measurement.ts';
import { dewPointAt } from '../../../server/src/physics/air/quantities.ts';
import { saturatedVapourPressure } from '../../../server/src/physics/air/saturated-vapour.ts';
import { quantityOf } from '../../../server/src/physics/air/state-quantities.ts';
import { type Draw, normal, propagateDistributions, rectangular } from '../../physics/monte-carlo.ts';
import { centralDifference, relativeDifference } from '../../physics/numeric.ts';

const TRIALS = 20_000;
/**
 * The standard uncertainty found in N trials has a relative standard error of at most 1/√(2N), that of a normal
 * distribution; rectangular inputs only lessen it. Four of them are passed by chance once in 16,000 comparisons.
 */
const SAMPLING_ERROR = 4 / Math.sqrt(2 * TRIALS);

type NamedBudget = readonly [name: string, budget: Budget];

const budgets = everyBudget();
const straight = budgets.filter(([, budget]) => linearityOf(budget)?.isLinearEnough === true);
const bent = budgets.filter(([, budget]) => linearityOf(budget)?.isLinearEnough !== true);

describe('Monte Carlo (JCGM 101, 20,000 trials) gives the standard uncertainty of the budget', () => {
  it('there are points of every kind to compare', () => {
    expect(straight.length).toBeGreaterThan(20);
    expect(new Set(straight.map(([, budget]) => budget.quantity)).size).toBeGreaterThan(4);
  });

  it.each(straight)('%s', (_, budget) => {
    const found = monteCarlo(budget);
    const secondOrder = withSignal(budget, linearityOf(budget)?.secondOrderUncertainty ?? Number.NaN);
    expect(relativeDifference(found.standardUncertainty, secondOrder)).toBeLessThan(SAMPLING_ERROR);
    // Up to 5 % between the first order and the second, known to 1e-4 of them, a budget is taken to be linear enough.
    expect(relativeDifference(budget.standardUncertainty, secondOrder)).toBeLessThan(0.0501);
  });
});

describe('where the linearity note is set, Monte Carlo agrees with the second order and not with the budget', () => {
  it.each(bent)('%s', (_, budget) => {
    const found = monteCarlo(budget).standardUncertainty;
    const secondOrder = withSignal(budget, linearityOf(budget)?.secondOrderUncertainty ?? Number.NaN);
    expect(Math.abs(found - secondOrder)).toBeLessThan(Math.abs(found - budget.standardUncertainty));
  });
});

describe('sensitivities are those of central differences', () => {
  it.each(budgets)('%s', (_, budget) => {
    for (const { enters, sensitivity, standardUncertainty, title } of budget.contributions) {
      const along = (deviation: number): number => reported(budget, { [enters]: deviation });
      const difference = centralDifference(along, 0, standardUncertainty / 100);
      // Of a hundredth of u the difference is off by f'''·h²/6, below a millionth; rounding adds a few of those.
      expect(relativeDifference(sensitivity, difference), title).toBeLessThan(1e-4);
    }
  });
});

function monteCarlo(budget: Budget) {
  const { contributions } = budget;
  const draws = contributions.map(drawOf);
  return propagateDistributions(
    (values) => {
      const deviations: Partial<Record<MeasuredInput, number>> = {};
      for (const [index, { enters }] of contributions.entries())
        deviations[enters] = (deviations[enters] ?? 0) + (values[index] ?? 0);
      return reported(budget, deviations);
    },
    draws,
    TRIALS,
    0.95,
    20_260_901,
  );
}

function drawOf({ statedAs, standardUncertainty }: BudgetContribution): Draw {
  const halfWidth = standardUncertainty * Math.sqrt(3);
  return statedAs === 'rectangular' ? rectangular(-halfWidth, halfWidth) : normal(0, standardUncertainty);
}

/** Q(U·f(ts, p)·ew(ts), t, p), where t is ts itself for an unheated head that gives the air temperature. */
function reported(budget: Budget, deviations: Partial<Record<MeasuredInput, number>>): number {
  const { state, measurement, quantity } = budget;
  const deviation = (input: MeasuredInput): number => deviations[input] ?? 0;
  const trueSensorCelsius = state.airCelsius + measurement.rise;
  const seen = state.vapourPressure / saturatedVapourPressure(trueSensorCelsius, state.pressure, 'water');
  const pressure = (measurement.ownPressure ?? state.pressure) + deviation('pressure');
  const sensorCelsius = trueSensorCelsius + deviation('sensor-temperature');
  const vapourPressure =
    (seen + deviation('sensor-humidity')) * saturatedVapourPressure(sensorCelsius, pressure, 'water');
  const taken = measurement.airIsSensor ? sensorCelsius : state.airCelsius;
  const air = { airCelsius: taken + deviation('air-temperature'), pressure, vapourPressure };
  const value =
    quantity === 'dew-point-at' ? dewPointAt(air, measurement.otherPressure ?? 0) : quantityOf(air, quantity);
  if (!value.ok) throw new Error(value.problem.kind);
  return value.value + deviation('reported-value');
}

/** The second order is that of what is measured; what a signal adds is linear. */
function withSignal({ contributions }: Budget, measured: number): number {
  const added = contributions.filter(({ enters }) => enters === 'reported-value');
  return Math.hypot(measured, ...added.map(({ resultUncertainty }) => resultUncertainty));
}

/** One budget for each place, point, quantity and phase; of equal ones the first. */
function everyBudget(): readonly NamedBudget[] {
  const rules = new URL('../../rules/', import.meta.url);
  const folders = readdirSync(rules, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const files = [
    ...folders.flatMap(({ name }) => filesIn(new URL(`${name}/`, rules))),
    ...filesIn(new URL('../../../samples/', import.meta.url)),
    ...filesIn(new URL('../../../samples/kits/', import.meta.url)),
  ];
  const workspace = new Workspace({ today: () => '2026-10-01' });
  for (const file of files) workspace.set(fileUri(file), readFileSync(file, 'utf8'));
  const found = new Map<string, NamedBudget>();
  for (const file of files) {
    const content = workspace.analysis(fileUri(file))?.content;
    for (const point of content?.kind === 'site' ? content.site.points.values() : []) {
      for (const budget of [...point.budgets.values()].flatMap(({ phases }) => phases())) {
        const phase = budget.at.phase === undefined ? '' : `, ${budget.at.phase}`;
        const place = file.split('/').slice(-2).join('/');
        const name = `${budget.quantity} of ${point.tag}${phase}, ${place}`;
        const key = `${budget.quantity} ${budget.value} ${budget.standardUncertainty}`;
        if (!found.has(key)) found.set(key, [name, budget]);
      }
    }
  }
  return [...found.values()];
}

function filesIn(folder: URL): readonly string[] {
  const isOurs = (name: string): boolean =>
    /^(sound.*\.dewsite|[^.]*\.dewkit|(?!faulty)[^.]*\.dewsite)\.yaml$/.test(name);
  return readdirSync(folder)
    .filter(isOurs)
    .map((name) => fileURLToPath(new URL(name, folder)));
}
