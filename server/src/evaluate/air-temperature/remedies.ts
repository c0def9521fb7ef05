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
import type { SpaceEvaluation } from '../air/space.ts';
import type { WorstState } from '../air/worst-fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { THICKEST_COLLAR } from '../mounting/space-wall.ts';
import { type OtherMounting, wallPull } from '../mounting/stem-error.ts';
import { inSpace, type ReportFact, reportFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { thermometerOf } from '../resolved/thermometer.ts';
import { type CostlyModel, cornerWhereCostly, costlyModel } from './cost.ts';
import { SHARE_OF_TOLERANCE, worstCost } from './cost-of-error.ts';
import type { ErrorKind } from './error-models.ts';
import { headWarming } from './head-warming.ts';

/** m. Longer probes are rare: from here on the fitting is insulated instead, where that helps. Common practice. */
const LONGEST_USUAL_INSERTION = 0.4;
/** m. No spacing beyond this is looked for. */
const LONGEST_SPACING = 2;

/** The insertion needed, where no insulation of the fitting does instead. */
export const insertionNeeded = remedyFact('insertion-needed', 'stem-conduction', 'insertion needed', (costly) => {
  const { insertion, insulation } = stemRemedies(costly);
  return insulation === undefined ? { length: insertion } : undefined;
});

/** The insulation, where no usual insertion would do and insulation does. */
export const insulationNeeded = remedyFact(
  'insulation-needed',
  'stem-conduction',
  'insulation of the fitting needed',
  (costly) => {
    const { insulation } = stemRemedies(costly);
    return insulation === undefined ? undefined : { length: insulation };
  },
);

export const spacingNeeded = remedyFact(
  'spacing-needed',
  'head-warming',
  'spacing that keeps the probe out of the warmth',
  (costly) => ({ length: spacingFor(costly) }),
);

export const largestSpacing = remedyFact(
  'largest-spacing',
  'gradient',
  'largest spacing that the gradient allows',
  ({ point, allowed, worst }) => {
    const given = point.point.airTemperatureProbe?.value.mounting?.value.spacing?.value.value ?? 0;
    const spacing = sensibleSpacing((given * allowed) / worst.value, 'down');
    return { length: spacing > 0 ? spacing : undefined };
  },
);

/** An error that takes more than its share of the report's tolerance. */
interface CostlyError extends CostlyModel {
  readonly point: ResolvedPoint;
  readonly space: SpaceEvaluation;
  readonly worst: WorstState;
  /** What it may cost, in the report's unit. */
  readonly allowed: number;
}

/** In m; undefined where no usual length brings the error down. */
interface Remedy {
  readonly length: number | undefined;
}

/** None while the error stays within its share, or the report has no tolerance. */
function remedyFact(
  name: string,
  kind: ErrorKind,
  title: string,
  remedyOf: (costly: CostlyError) => Remedy | undefined,
): ReportFact<'length'> {
  return reportFact(name, {
    title: () => title,
    dimension: 'length',
    compute: inSpace((point, space, quantity) => {
      const costly = costlyModel(point, quantity, kind);
      const tolerance = costly?.report.report.value.tolerance;
      if (costly?.worst === undefined || tolerance === undefined) return undefined;
      const { model, worst } = costly;
      const allowed = tolerance.value.value * SHARE_OF_TOLERANCE;
      if (!exceeds(worst.value, allowed)) return undefined;
      const remedy = remedyOf({ ...costly, worst, point, space, allowed });
      if (remedy === undefined) return undefined;
      return {
        value: remedy.length,
        ...(remedy.length === undefined ? { missing: 'no length that is usual brings the error down' } : {}),
        at: cornerWhereCostly(model, worst),
        derivation: () => ({
          inputs: [...quantityInput('tolerance', tolerance), ...model.inputs, ...worst.phase.envelope.inputs],
          relation: model.relation,
          formulas: model.formulas,
          notes: [...model.notes, 'One error may take a third of the tolerance.'],
        }),
      };
    }),
  });
}

interface StemRemedies {
  readonly insertion: number | undefined;
  readonly insulation: number | undefined;
}

function stemRemedies(costly: CostlyError): StemRemedies {
  const { point, thermometer, space, sensitivityAt, allowed } = costly;
  const costWith = (other: OtherMounting): number => {
    const pull = wallPull(thermometerOf(point, thermometer), space, other);
    return (pull.ok ? worstCost(space.phases, pull.value.stemConduction, sensitivityAt)?.value : undefined) ?? 0;
  };
  const insertion = insertionFor(costly, costWith);
  const isUsual = insertion !== undefined && insertion <= LONGEST_USUAL_INSERTION;
  const insulation = isUsual
    ? undefined
    : INSULATION_THICKNESSES.find(
        (thickness) => thickness <= THICKEST_COLLAR && !exceeds(costWith({ insulation: thickness }), allowed),
      );
  return { insertion, insulation };
}

/** To the next 10 mm; a step more where that only just moves the worst state to another. */
function insertionFor(
  { point, space, thermometer, sensitivityAt, worst: { state, phase }, allowed }: CostlyError,
  costWith: (other: OtherMounting) => number,
): number | undefined {
  const pull = wallPull(thermometerOf(point, thermometer), space);
  const sensitivity = sensitivityAt(state);
  if (!pull.ok || sensitivity === undefined) return undefined;
  const needed = valueIfOk(pull.value.insertionFor(state, phase.envelope, allowed / sensitivity));
  if (needed === undefined) return undefined;
  const insertion = sensibleInsertion(needed);
  return !exceeds(costWith({ insertion }), allowed) ? insertion : sensibleInsertion(insertion + INSERTION_STEP);
}

/** The least multiple of 10 mm at which the warming at the worst state is no more than its share. */
function spacingFor({ point, sensitivityAt, worst: { state, phase }, allowed }: CostlyError): number | undefined {
  const sensitivity = sensitivityAt(state) ?? 0;
  const suffices = (steps: number): boolean => {
    const warming = valueIfOk(headWarming(point, steps * SPACING_STEP)(state, phase.envelope));
    return warming !== undefined && !exceeds(warming.estimate * sensitivity, allowed);
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
