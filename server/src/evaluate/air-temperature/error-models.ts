/** The errors of a thermometer whose cost is told report by report: what each is called, rests on and amounts to. */
import { succeed } from '../../base/outcome.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import type { Formula } from '../../physics/formula.ts';
import { HEAD_CONDUCTANCE } from '../../physics/heat/head-conductance.ts';
import { CROSS_FLOW_CYLINDER } from '../../physics/heat/heat-transfer.ts';
import { RAMP_LAG, RESPONSE_WITH_SPEED } from '../../physics/heat/lag.ts';
import { HEAD_PLUME, HEAD_WAKE } from '../../physics/heat/plume.ts';
import { STEM_CONDUCTION } from '../../physics/heat/stem-conduction.ts';
import { WALL_TEMPERATURES } from '../../physics/heat/wall.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { FactInput } from '../facts/fact.ts';
import type { Given } from '../facts/given.ts';
import { wallPull } from '../mounting/stem-error.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type ThermometerKind, thermometerOf } from '../resolved/thermometer.ts';
import { type AirTemperatureError, gradientError } from './errors.ts';
import { headWarming, WARMING_NOTES } from './head-warming.ts';
import { gradientInputs, lagInputs, warmingInputs } from './probe-inputs.ts';
import { LAG_NOTES, probeLag } from './probe-lag.ts';

/** Radiation has no cost of its own: a shield mends it, and no number of the file does. */
export type ErrorKind = Exclude<AirTemperatureError, 'radiation'>;

export const ERROR_KINDS: readonly ErrorKind[] = ['stem-conduction', 'lag', 'head-warming', 'gradient'];

export interface ErrorModel {
  readonly kind: ErrorKind;
  /** What the error comes from, as titles say it. */
  readonly from: string;
  readonly relation: string;
  readonly formulas: readonly Formula[];
  readonly notes: readonly string[];
  readonly inputs: readonly FactInput[];
  /** True where the least air speed of the phase is what it was computed at. */
  readonly atLeastSpeed: boolean;
  /** K, 0 or more. */
  readonly errorAt: (state: AirState, phase: PhaseEnvelope) => Given<number>;
}

export function errorModels(
  point: ResolvedPoint,
  space: SpaceEvaluation,
  kind: ThermometerKind,
): readonly ErrorModel[] {
  const ofBoth = [stemConduction(point, space, kind), lag(point, space, kind)];
  return kind === 'own-head' ? ofBoth : [...ofBoth, warming(point), gradient(point, space)];
}

function stemConduction(point: ResolvedPoint, space: SpaceEvaluation, kind: ThermometerKind): ErrorModel {
  const thermometer = thermometerOf(point, kind);
  const pull = wallPull(thermometer, space);
  return {
    kind: 'stem-conduction',
    from: `the wall, along the stem of the ${thermometer.title}`,
    relation: '|t − t(fitting)| / cosh(m L)',
    formulas: [STEM_CONDUCTION, CROSS_FLOW_CYLINDER, WALL_TEMPERATURES],
    notes: pull.ok ? pull.value.notes : [],
    inputs: pull.ok ? pull.value.inputs : [],
    atLeastSpeed: true,
    errorAt: (state, phase) => (pull.ok ? pull.value.stemConduction(state, phase) : pull),
  };
}

/**
 * Both probes trail. With the vapour pressure constant on the ramp the thermometer's own lag counts, with the relative
 * humidity constant what the two probes are apart: the larger of the two bounds all between.
 */
function lag(point: ResolvedPoint, space: SpaceEvaluation, kind: ThermometerKind): ErrorModel {
  const lagAt = probeLag(point, kind);
  return {
    kind: 'lag',
    from: 'lag behind the ramp',
    relation: 'r max(τ(thermometer), |τ(humidity probe) − τ(thermometer)|)',
    formulas: [RAMP_LAG, RESPONSE_WITH_SPEED],
    notes: LAG_NOTES,
    inputs: lagInputs(point, space, kind),
    atLeastSpeed: true,
    errorAt: (state, phase) => {
      const { thermometer, difference } = lagAt(state, phase);
      if (!thermometer.ok || !difference.ok) return thermometer;
      return succeed(Math.max(thermometer.value, difference.value));
    },
  };
}

function warming(point: ResolvedPoint): ErrorModel {
  const warmingAt = headWarming(point);
  const position = point.point.airTemperatureProbe?.value.mounting?.value.position?.value;
  return {
    kind: 'head-warming',
    from: 'the warmth of the heated head',
    relation: 'plume above the head, wake downstream of it, nothing elsewhere',
    formulas: [position === 'downstream' ? HEAD_WAKE : HEAD_PLUME, HEAD_CONDUCTANCE],
    notes: WARMING_NOTES,
    inputs: warmingInputs(point),
    atLeastSpeed: true,
    errorAt: (state, phase) => {
      const estimated = warmingAt(state, phase);
      return estimated.ok ? succeed(estimated.value.estimate) : estimated;
    },
  };
}

function gradient(point: ResolvedPoint, space: SpaceEvaluation): ErrorModel {
  const error = gradientError(point, space);
  return {
    kind: 'gradient',
    from: 'the gradient between the probes',
    relation: 'gradient · spacing',
    formulas: [],
    notes: [],
    inputs: gradientInputs(point, space),
    atLeastSpeed: false,
    errorAt: () => error,
  };
}
