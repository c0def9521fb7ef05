/** What brings an error of the air temperature down to its share of the tolerance: insertion, insulation or spacing. */

import { valueIfOk } from '../../base/outcome.ts';
import { exceeds } from '../../base/rounding.ts';
import {
  INSERTION_STEP,
  INSULATION_THICKNESSES,
  SPACING_STEP,
  sensibleInsertion,
  sensibleSpacing,
} from '../../physics/mathematics/sensible-steps.ts';
import type { WorstState } from '../air/worst-fact.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Fact } from '../facts/fact.ts';
import { THICKEST_COLLAR } from '../mounting/space-wall.ts';
import { type OtherMounting, wallPull } from '../mounting/stem-error.ts';
import type { ReportEvaluation, ResolvedPoint } from '../point.ts';
import { type ThermometerKind, thermometerOf } from '../resolved/thermometer.ts';
import type { SpaceEvaluation } from '../space.ts';
import { type Sensitivity, SHARE_OF_TOLERANCE, worstCost } from './cost-of-error.ts';
import type { ErrorModel } from './error-models.ts';
import { headWarming } from './head-warming.ts';
import { quantityInput } from './probe-inputs.ts';

export interface ErrorOfReport {
  readonly point: ResolvedPoint;
  readonly space: SpaceEvaluation;
  readonly thermometer: ThermometerKind;
  readonly report: ReportEvaluation;
  readonly sensitivityAt: Sensitivity;
}

/** m. Longer probes are rare: from here on the fitting is insulated instead, where that helps. Common practice. */
const LONGEST_USUAL_INSERTION = 0.4;
/** m. No spacing beyond this is looked for. */
const LONGEST_SPACING = 2;

/** None while the error stays within its share, or the report has no tolerance. */
export function remedyFacts(of: ErrorOfReport, model: ErrorModel, worst: WorstState): readonly Fact[] {
  const tolerance = of.report.report.value.tolerance?.value.value;
  const allowed = (tolerance ?? Number.POSITIVE_INFINITY) * SHARE_OF_TOLERANCE;
  if (!exceeds(worst.value, allowed)) return [];
  switch (model.kind) {
    case 'stem-conduction':
      return stemRemedies(of, model, worst, allowed);
    case 'head-warming': {
      const spacing = spacingFor(of, worst, allowed);
      return [
        remedyFact(of, model, worst, 'spacing-needed', 'spacing that keeps the probe out of the warmth', spacing),
      ];
    }
    case 'gradient': {
      const given = of.point.point.airTemperatureProbe?.value.mounting?.value.spacing?.value.value ?? 0;
      const spacing = sensibleSpacing((given * allowed) / worst.value, 'down');
      const title = 'largest spacing that the gradient allows';
      return [remedyFact(of, model, worst, 'largest-spacing', title, spacing > 0 ? spacing : undefined)];
    }
    case 'lag':
      return [];
  }
}

/** The insertion needed; or the insulation, where no usual insertion would do and insulation does. */
function stemRemedies(of: ErrorOfReport, model: ErrorModel, worst: WorstState, allowed: number): readonly Fact[] {
  const costWith = (other: OtherMounting): number => {
    const pull = wallPull(thermometerOf(of.point, of.thermometer), of.space, other);
    const cost = pull.ok ? worstCost(of.space.phases, pull.value.stemConduction, of.sensitivityAt) : undefined;
    return cost?.value ?? 0;
  };
  const insertion = insertionFor(of, worst, allowed, costWith);
  const insulation =
    insertion === undefined || insertion > LONGEST_USUAL_INSERTION
      ? INSULATION_THICKNESSES.find(
          (thickness) => thickness <= THICKEST_COLLAR && costWith({ insulation: thickness }) <= allowed,
        )
      : undefined;
  return insulation === undefined
    ? [remedyFact(of, model, worst, 'insertion-needed', 'insertion needed', insertion)]
    : [remedyFact(of, model, worst, 'insulation-needed', 'insulation of the fitting needed', insulation)];
}

/** To the next 10 mm; a step more where that only just moves the worst state to another. */
function insertionFor(
  { point, space, thermometer, sensitivityAt }: ErrorOfReport,
  { state, phase }: WorstState,
  allowed: number,
  costWith: (other: OtherMounting) => number,
): number | undefined {
  const pull = wallPull(thermometerOf(point, thermometer), space);
  const sensitivity = sensitivityAt(state);
  if (!pull.ok || sensitivity === undefined) return undefined;
  const needed = valueIfOk(pull.value.insertionFor(state, phase.envelope, allowed / sensitivity));
  if (needed === undefined) return undefined;
  const insertion = sensibleInsertion(needed);
  return costWith({ insertion }) <= allowed ? insertion : sensibleInsertion(insertion + INSERTION_STEP);
}

/** The least multiple of 10 mm at which the warming at the worst state is no more than its share. */
function spacingFor({ point, sensitivityAt }: ErrorOfReport, { state, phase }: WorstState, allowed: number) {
  const sensitivity = sensitivityAt(state) ?? 0;
  const suffices = (steps: number): boolean => {
    const warming = valueIfOk(headWarming(point, steps * SPACING_STEP)(state, phase.envelope));
    return warming !== undefined && warming.estimate * sensitivity <= allowed;
  };
  let [tooClose, enough] = [0, Math.round(LONGEST_SPACING / SPACING_STEP)];
  if (!suffices(enough)) return undefined;
  while (enough - tooClose > 1) {
    const middle = Math.floor((tooClose + enough) / 2);
    if (suffices(middle)) enough = middle;
    else tooClose = middle;
  }
  return sensibleSpacing(enough * SPACING_STEP, 'up');
}

function remedyFact(
  { report }: ErrorOfReport,
  { formulas, notes, inputs, relation, atLeastSpeed }: ErrorModel,
  { state, phase: { envelope } }: WorstState,
  id: 'insertion-needed' | 'insulation-needed' | 'spacing-needed' | 'largest-spacing',
  title: string,
  value: number | undefined,
): Fact {
  return {
    id: `${report.quantity}/${id}`,
    title,
    dimension: 'length',
    value,
    ...(value === undefined ? { missing: 'no length that is usual brings the error down' } : {}),
    at: cornerOf(state, envelope.phase, atLeastSpeed ? envelope.speed?.value.low : undefined),
    inputs: [...quantityInput('tolerance', report.report.value.tolerance), ...inputs, ...envelope.inputs],
    relation,
    formulas,
    notes: [...notes, 'One error may take a third of the tolerance.'],
  };
}
