/**
 * The errors of the air temperature of every report, and what they cost it. The report's tolerance becomes a budget
 * for the air temperature; one error may take a third of it.
 */
import { succeed, valueIfOk } from '../../base/outcome.ts';
import { rememberedOf } from '../../base/remembered.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { type WorstState, worstFact } from '../air/worst-fact.ts';
import { cornerOf } from '../facts/corner.ts';
import { type FactInput, isKnown, showFact } from '../facts/fact.ts';
import { quantityInput, speedInput } from '../facts/inputs.ts';
import { completeSpace, inSpace, type ReportFact, reportFact } from '../resolved/point-fact.ts';
import type { ReportEvaluation, ResolvedPoint } from '../resolved/resolved-point.ts';
import { type ThermometerKind, thermometerKindOf } from '../resolved/thermometer.ts';
import { type Sensitivity, sensitivityOf, worstCost } from './cost-of-error.ts';
import { ERROR_KINDS, type ErrorKind, type ErrorModel, errorModels } from './error-models.ts';

/** The smallest error of the air temperature that uses the whole tolerance. */
export const airTemperatureBudget = reportFact('air-temperature-budget', {
  title: (quantity) =>
    `error of the air temperature that uses the whole tolerance of the ${quantityInfo(quantity).title}`,
  dimension: 'temperature-difference',
  compute: inSpace((point, space, quantity) => {
    const read = readsThermometer(point, quantity);
    const tolerance = read?.report.report.value.tolerance;
    if (read === undefined || tolerance === undefined) return undefined;
    const perKelvin = worstCost(space.phases, () => succeed(1), read.sensitivityAt);
    if (perKelvin === undefined || perKelvin.value === 0) return undefined;
    const base = { relation: 'tolerance / |∂Q/∂t|, the vapour pressure held', formulas: [] };
    const worst = { ...perKelvin, value: tolerance.value.value / perKelvin.value };
    return worstFact(base, worst, () => quantityInput('tolerance', tolerance));
  }),
});

type OfEachKind<Fact> = Readonly<Record<ErrorKind, Fact>>;

/** Each error in K, where it costs its report most. */
export const airTemperatureError = ofEachKind((kind) =>
  reportFact(`${kind}-error`, {
    title: (quantity, point) => `error of the air temperature from ${costlyModel(point, quantity, kind)?.model.from}`,
    dimension: 'temperature-difference',
    compute: inSpace((point, space, quantity) => {
      const costly = costlyModel(point, quantity, kind);
      if (costly === undefined) return undefined;
      const { model, worst } = costly;
      const { relation, formulas, notes, inputs } = model;
      if (worst === undefined) {
        const missing = whatIsLacking(space, model) ?? 'no state of the envelope has it';
        return { value: undefined, missing, derivation: () => ({ inputs, relation, formulas, notes }) };
      }
      return {
        value: valueIfOk(model.errorAt(worst.state, worst.phase.envelope)),
        at: cornerWhereCostly(model, worst),
        derivation: () => ({ inputs: [...inputs, ...inputsOfPhase(model, worst)], relation, formulas, notes }),
      };
    }),
  }),
);

/** What each error costs its report, in the report's unit. */
export const airTemperatureCost: OfEachKind<ReportFact> = ofEachKind((kind) =>
  reportFact(`${kind}-cost`, {
    title: (quantity, point) =>
      `error of the ${quantityInfo(quantity).title} from ${costlyModel(point, quantity, kind)?.model.from}`,
    dimension: (quantity) => quantityInfo(quantity).difference,
    compute: inSpace((point, _, quantity) => {
      const costly = costlyModel(point, quantity, kind);
      if (costly?.worst === undefined) return undefined;
      const { report, model, worst } = costly;
      return {
        value: worst.value,
        at: cornerWhereCostly(model, worst),
        derivation: () => {
          const error = point.facts.get(airTemperatureError[kind](quantity));
          return {
            inputs: [
              ...(isKnown(error) ? [{ label: error.title, text: showFact(error) }] : []),
              ...quantityInput('tolerance', report.report.value.tolerance),
              ...model.inputs,
              ...inputsOfPhase(model, worst),
            ],
            relation: '|∂Q/∂t| · error of the air temperature, the vapour pressure held',
            formulas: model.formulas,
            notes: model.notes,
          };
        },
      };
    }),
  }),
);

function ofEachKind<Fact>(declare: (kind: ErrorKind) => Fact): OfEachKind<Fact> {
  return Object.fromEntries(ERROR_KINDS.map((kind) => [kind, declare(kind)])) as OfEachKind<Fact>;
}

interface ThermometerRead {
  readonly report: ReportEvaluation;
  readonly thermometer: ThermometerKind;
  readonly sensitivityAt: Sensitivity;
}

/** Only of reports that read the air temperature from a probe of their own point. */
function readsThermometer({ reports }: ResolvedPoint, quantity: QuantityName): ThermometerRead | undefined {
  const report = reports.find((candidate) => candidate.quantity === quantity);
  const thermometer = report === undefined ? undefined : thermometerKindOf(report.source);
  if (report === undefined || thermometer === undefined) return undefined;
  return { report, thermometer, sensitivityAt: sensitivityOf(quantity) };
}

export interface CostlyModel extends ThermometerRead {
  readonly model: ErrorModel;
  /** Where it costs the report most, in the report's unit; undefined where something is lacking. */
  readonly worst: WorstState | undefined;
}

/** Undefined where the report's thermometer has no such error. */
export function costlyModel(point: ResolvedPoint, quantity: QuantityName, kind: ErrorKind): CostlyModel | undefined {
  return costlyModels(point, quantity).find(({ model }) => model.kind === kind);
}

const costlyModels = rememberedOf((point: ResolvedPoint, quantity: QuantityName): readonly CostlyModel[] => {
  const space = completeSpace(point);
  const read = readsThermometer(point, quantity);
  if (space === undefined || read === undefined) return [];
  return modelsOf(point, read.thermometer).map((model) => {
    const worst = worstCost(space.phases, model.errorAt, read.sensitivityAt);
    return { ...read, model, worst };
  });
});

/** What two reports need is looked up once. */
const modelsOf = rememberedOf((point: ResolvedPoint, thermometer: ThermometerKind): readonly ErrorModel[] => {
  const space = completeSpace(point);
  return space === undefined ? [] : errorModels(point, space, thermometer);
});

export function cornerWhereCostly({ atLeastSpeed }: ErrorModel, { state, phase: { envelope } }: WorstState) {
  return cornerOf(state, envelope.phase, atLeastSpeed ? envelope.speed?.value.low : undefined);
}

function inputsOfPhase({ atLeastSpeed }: ErrorModel, { phase: { envelope } }: WorstState): readonly FactInput[] {
  return [...(atLeastSpeed ? speedInput(envelope) : []), ...envelope.inputs];
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
