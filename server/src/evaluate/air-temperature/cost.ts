/**
 * The errors of the air temperature of every report, and what they cost it. The report's tolerance becomes a budget
 * for the air temperature; one error may take a third of it.
 */
import { succeed, valueIfOk } from '../../base/outcome.ts';
import { quantityInfo } from '../../quantity/quantity-names.ts';
import { type WorstState, worstFact } from '../air/worst-fact.ts';
import { cornerOf } from '../facts/corner.ts';
import { type Fact, isKnown, showFact } from '../facts/fact.ts';
import type { ReportEvaluation, ResolvedPoint } from '../point.ts';
import { type ThermometerKind, thermometerKindOf } from '../resolved/thermometer.ts';
import type { SpaceEvaluation } from '../space.ts';
import { type Sensitivity, sensitivityOf, worstCost } from './cost-of-error.ts';
import { type ErrorModel, errorModels } from './error-models.ts';
import { quantityInput, speedInput } from './probe-inputs.ts';
import { remedyFacts } from './remedies.ts';

/** The facts of every report that reads the air temperature from a probe of its own point. */
export function airTemperatureCostFacts(point: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const modelsOf = new Map<ThermometerKind, readonly ErrorModel[]>();
  return point.reports.flatMap((report) => {
    const thermometer = thermometerKindOf(report.source);
    if (thermometer === undefined) return [];
    const models = modelsOf.get(thermometer) ?? errorModels(point, space, thermometer);
    modelsOf.set(thermometer, models);
    const sensitivityAt = sensitivityOf(report.quantity);
    const costs = models.flatMap((model) => {
      const worst = worstCost(space.phases, model.errorAt, sensitivityAt);
      if (worst === undefined) return [unknownError(report, space, model)];
      const remedies = remedyFacts({ point, space, thermometer, report, sensitivityAt }, model, worst);
      return [...costFacts(report, model, worst), ...remedies];
    });
    return [...budgetFact(report, space, sensitivityAt), ...costs];
  });
}

/** The smallest error of the air temperature that uses the whole tolerance. */
function budgetFact(
  { quantity, report }: ReportEvaluation,
  space: SpaceEvaluation,
  sensitivityAt: Sensitivity,
): readonly Fact[] {
  const { tolerance } = report.value;
  const perKelvin = worstCost(space.phases, () => succeed(1), sensitivityAt);
  if (tolerance === undefined || perKelvin === undefined || perKelvin.value === 0) return [];
  const base = {
    id: `${quantity}/air-temperature-budget`,
    title: `error of the air temperature that uses the whole tolerance of the ${quantityInfo(quantity).title}`,
    dimension: 'temperature-difference' as const,
    relation: 'tolerance / |∂Q/∂t|, the vapour pressure held',
    formulas: [],
  };
  const worst = { ...perKelvin, value: tolerance.value.value / perKelvin.value };
  return [worstFact(base, worst, quantityInput('tolerance', tolerance))];
}

/** The error in K and what it costs in the report's unit, both where it costs most. */
function costFacts({ quantity, report }: ReportEvaluation, model: ErrorModel, worst: WorstState): readonly Fact[] {
  const { title, difference } = quantityInfo(quantity);
  const { kind, from, formulas, notes, inputs } = model;
  const { envelope } = worst.phase;
  const at = cornerOf(worst.state, envelope.phase, model.atLeastSpeed ? envelope.speed?.value.low : undefined);
  const ofPhase = [...(model.atLeastSpeed ? speedInput(envelope) : []), ...envelope.inputs];
  const error = {
    value: valueIfOk(model.errorAt(worst.state, envelope)),
    at,
    inputs: [...inputs, ...ofPhase],
    ...errorBase(quantity, model),
  };
  const ofError = isKnown(error) ? [{ label: error.title, text: showFact(error) }] : [];
  const cost = {
    id: `${quantity}/${kind}-cost`,
    title: `error of the ${title} from ${from}`,
    dimension: difference,
    relation: '|∂Q/∂t| · error of the air temperature, the vapour pressure held',
    formulas,
    notes,
    value: worst.value,
    at,
    inputs: [...ofError, ...quantityInput('tolerance', report.value.tolerance), ...inputs, ...ofPhase],
  };
  return [error, cost];
}

function unknownError({ quantity }: ReportEvaluation, space: SpaceEvaluation, model: ErrorModel): Fact {
  const missing = whatIsLacking(space, model) ?? 'no state of the envelope has it';
  return { value: undefined, missing, inputs: model.inputs, ...errorBase(quantity, model) };
}

function errorBase(quantity: ReportEvaluation['quantity'], { kind, from, relation, formulas, notes }: ErrorModel) {
  return {
    id: `${quantity}/${kind}-error`,
    title: `error of the air temperature from ${from}`,
    dimension: 'temperature-difference' as const,
    relation,
    formulas,
    notes,
  };
}

/** What the first phase that lacks something lacks. */
function whatIsLacking(space: SpaceEvaluation, model: ErrorModel): string | undefined {
  for (const { envelope, sampled } of space.phases) {
    const state = sampled?.samples[0]?.state;
    const error = state === undefined ? undefined : model.errorAt(state, envelope);
    if (error?.ok === false) return error.problem;
  }
  return undefined;
}
