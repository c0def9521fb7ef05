/** How far above the air the heater can hold the head: its power over what the fastest air and the stem take away. */
import { succeed } from '../../base/outcome.ts';
import { dryAirProperties } from '../../physics/air/air-properties.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { HEAD_CONDUCTANCE, headConductance } from '../../physics/heat/head-conductance.ts';
import { heaterPower, REACHABLE_RISE, reachableRise } from '../../physics/heat/heater-rise.ts';
import { roundDownToStep } from '../../physics/mathematics/sensible-steps.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { temperatureEnds } from '../air/temperature-ends.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Computed } from '../facts/declared-fact.ts';
import { type FactInput, isKnown, showFact } from '../facts/fact.ts';
import { type Given, given, positive } from '../facts/given.ts';
import { quantityInput, speedInput } from '../facts/inputs.ts';
import { inSpace, pointFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { voltageAtProbe } from '../supply/facts.ts';
import { type HeatedHeadOfPoint, heatedHead } from './heated-head.ts';

const NOTES: readonly string[] = [
  'At the highest air speed and pressure, where the head loses most heat, and the least voltage at the probe.',
  'A filter or cage over the sensor is not modelled: within about 25 %.',
];

/** K, that a rise worth asking for is rounded down to. */
const RISE_STEP = 0.5;

/** The state of the envelope at which the head loses most, W/K. */
interface MostCooled {
  readonly state: AirState;
  readonly phase: PhaseEvaluation;
  readonly speed: number;
  readonly conductance: number;
}

/** A constant-power heater takes its power at any voltage. */
export const riseReachable = pointFact('rise-reachable', {
  title: 'rise that the heater reaches',
  dimension: 'temperature-difference',
  compute: inSpace((point, space) => {
    const reached = reachedRise(point, space);
    return reached === undefined ? undefined : riseFact(point, reached, (rise) => rise);
  }),
});

export const largestRiseToAsk = pointFact('largest-rise-to-ask', {
  title: 'largest rise worth asking for',
  dimension: 'temperature-difference',
  compute: inSpace((point, space) => {
    const reached = reachedRise(point, space);
    return reached?.ok === true ? riseFact(point, reached, (rise) => roundDownToStep(rise, RISE_STEP)) : undefined;
  }),
});

interface ReachedRise {
  readonly head: HeatedHeadOfPoint;
  readonly most: MostCooled;
  /** K. */
  readonly rise: number;
  readonly isLimitedByModel: boolean;
}

/** Undefined where no heater is on. */
function reachedRise(point: ResolvedPoint, space: SpaceEvaluation): Given<ReachedRise> | undefined {
  const model = point.humidityProbeModel?.model?.value.heater?.value;
  if (!point.heater.on || model === undefined) return undefined;
  const maximum = positive(model.maximumRise, 'the kit gives no largest rise of the heater');
  if (!maximum.ok) return maximum;
  const head = heatedHead(point);
  if (!head.ok) return head;
  const power = powerAtProbe(point);
  if (!power.ok) return power;
  const most = given(mostCooled(head.value, maximum.value, space), 'no air speed is given');
  if (!most.ok) return most;
  const { state, speed } = most.value;
  const reached = reachableRise(power.value, (rise) => conductanceAt(head.value, state, speed, rise), maximum.value);
  const isLimitedByModel = reached.limitedBy === 'maximum-rise';
  return succeed({ head: head.value, most: most.value, rise: reached.rise, isLimitedByModel });
}

function riseFact(point: ResolvedPoint, reached: Given<ReachedRise>, rounded: (rise: number) => number): Computed {
  const formulas = [REACHABLE_RISE, HEAD_CONDUCTANCE];
  if (!reached.ok) {
    const derivation = () => ({ inputs: riseInputs(point), formulas, notes: NOTES });
    return { value: undefined, missing: reached.problem, derivation };
  }
  const { head, most, rise, isLimitedByModel } = reached.value;
  const { state, phase, speed } = most;
  return {
    value: rounded(rise),
    at: cornerOf(state, phase.envelope.phase, speed),
    derivation: () => ({
      inputs: [...riseInputs(point), ...head.inputs, ...speedInput(phase.envelope), conductanceInput(head, most, rise)],
      formulas,
      notes: [...(isLimitedByModel ? ['The power would allow more; the model allows no larger rise.'] : []), ...NOTES],
    }),
  };
}

function powerAtProbe({ humidityProbeModel, facts }: ResolvedPoint): Given<number> {
  const model = humidityProbeModel?.model?.value.heater?.value;
  const power = positive(model?.power, 'the kit gives no power of the heater');
  if (!power.ok) return power;
  const kind = given(model?.kind?.value, 'the kit does not say how the heater loads the supply');
  if (!kind.ok || kind.value === 'constant-power') return kind.ok ? power : kind;
  const rated = positive(model?.ratedVoltage, 'the kit gives no rated voltage of the heater');
  if (!rated.ok) return rated;
  const voltage = given(facts.get(voltageAtProbe)?.value, 'the voltage at the probe is not known');
  if (!voltage.ok) return voltage;
  return succeed(heaterPower(kind.value, power.value, rated.value, voltage.value));
}

/** Of the coldest and the hottest air of each phase: between them the conductance changes by little and one way. */
function mostCooled(head: HeatedHeadOfPoint, rise: number, space: SpaceEvaluation): MostCooled | undefined {
  let most: MostCooled | undefined;
  for (const phase of space.phases) {
    const speed = phase.envelope.speed?.value.high;
    if (speed === undefined) continue;
    for (const state of temperatureEnds(phase)) {
      const conductance = conductanceAt(head, state, speed, rise);
      if (most === undefined || conductance > most.conductance) most = { state, phase, speed, conductance };
    }
  }
  return most;
}

function conductanceAt({ geometry }: HeatedHeadOfPoint, state: AirState, speed: number, rise: number): number {
  const film = dryAirProperties(state.airCelsius + rise / 2, state.pressure);
  return headConductance(geometry, speed, rise, state.airCelsius, film).total;
}

function riseInputs({ humidityProbeModel, facts }: ResolvedPoint): readonly FactInput[] {
  const model = humidityProbeModel?.model?.value.heater?.value;
  const supply = facts.get(voltageAtProbe);
  const voltage = isKnown(supply) ? [{ label: supply.title, text: showFact(supply) }] : [];
  return [
    ...quantityInput('power of the heater', model?.power, humidityProbeModel?.file),
    ...quantityInput('largest rise of the model', model?.maximumRise, humidityProbeModel?.file),
    ...voltage,
  ];
}

/** How the heat splits over convection, radiation and stem. */
function conductanceInput({ geometry }: HeatedHeadOfPoint, { state, speed }: MostCooled, rise: number): FactInput {
  const film = dryAirProperties(state.airCelsius + rise / 2, state.pressure);
  const { convection, radiation, stem, total } = headConductance(geometry, speed, rise, state.airCelsius, film);
  const watts = (conductance: number): string => showQuantity(conductance * rise, 'power');
  return {
    label: 'heat lost at that rise',
    text: `${watts(total)}: convection ${watts(convection)}, radiation ${watts(radiation)}, stem ${watts(stem)}`,
  };
}
