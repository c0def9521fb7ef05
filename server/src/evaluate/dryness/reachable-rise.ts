/** How far above the air the heater can hold the head: its power over what the fastest air and the stem take away. */
import { succeed } from '../../base/outcome.ts';
import { dryAirProperties } from '../../physics/air/air-properties.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { HEAD_CONDUCTANCE, headConductance } from '../../physics/heat/head-conductance.ts';
import { heaterPower, REACHABLE_RISE, reachableRise } from '../../physics/heat/heater-rise.ts';
import { roundDownToStep } from '../../physics/mathematics/sensible-steps.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { temperatureEnds } from '../air/temperature-ends.ts';
import { quantityInput, speedInput } from '../air-temperature/probe-inputs.ts';
import { cornerOf } from '../facts/corner.ts';
import { type Fact, type FactInput, isKnown, showFact } from '../facts/fact.ts';
import { type Given, given, positive } from '../facts/given.ts';
import type { ResolvedPoint } from '../point.ts';
import type { SpaceEvaluation } from '../space.ts';
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

/** @param supply the fact of the voltage at the probe; a constant-power heater takes its power at any voltage */
export function reachableRiseFacts(
  resolved: ResolvedPoint,
  space: SpaceEvaluation,
  supply: Fact | undefined,
): readonly Fact[] {
  const { heater, humidityProbeModel } = resolved;
  const model = humidityProbeModel?.model?.value.heater?.value;
  if (!heater.on || model === undefined) return [];
  const base = {
    id: 'rise-reachable',
    title: 'rise that the heater reaches',
    dimension: 'temperature-difference' as const,
    formulas: [REACHABLE_RISE, HEAD_CONDUCTANCE],
  };
  const inputs = riseInputs(resolved, supply);
  const lacking = (missing: string): readonly Fact[] => [{ value: undefined, missing, inputs, notes: NOTES, ...base }];
  const maximum = positive(model.maximumRise, 'the kit gives no largest rise of the heater');
  if (!maximum.ok) return lacking(maximum.problem);
  const head = heatedHead(resolved);
  if (!head.ok) return lacking(head.problem);
  const power = powerAtProbe(resolved, supply);
  if (!power.ok) return lacking(power.problem);
  const most = given(mostCooled(head.value, maximum.value, space), 'no air speed is given');
  if (!most.ok) return lacking(most.problem);
  const { state, phase, speed } = most.value;
  const reached = reachableRise(power.value, (rise) => conductanceAt(head.value, state, speed, rise), maximum.value);
  const limited =
    reached.limitedBy === 'maximum-rise' ? ['The power would allow more; the model allows no larger rise.'] : [];
  const fact: Fact = {
    value: reached.rise,
    at: cornerOf(state, phase.envelope.phase, speed),
    inputs: [
      ...inputs,
      ...head.value.inputs,
      ...speedInput(phase.envelope),
      conductanceInput(head.value, most.value, reached.rise),
    ],
    notes: [...limited, ...NOTES],
    ...base,
  };
  const rounded = roundDownToStep(reached.rise, RISE_STEP);
  return [fact, { ...fact, id: 'largest-rise-to-ask', title: 'largest rise worth asking for', value: rounded }];
}

function powerAtProbe({ humidityProbeModel }: ResolvedPoint, supply: Fact | undefined): Given<number> {
  const model = humidityProbeModel?.model?.value.heater?.value;
  const power = positive(model?.power, 'the kit gives no power of the heater');
  if (!power.ok) return power;
  const kind = given(model?.kind?.value, 'the kit does not say how the heater loads the supply');
  if (!kind.ok || kind.value === 'constant-power') return kind.ok ? power : kind;
  const rated = positive(model?.ratedVoltage, 'the kit gives no rated voltage of the heater');
  if (!rated.ok) return rated;
  const voltage = given(supply?.value, 'the voltage at the probe is not known');
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

function riseInputs({ humidityProbeModel }: ResolvedPoint, supply: Fact | undefined): readonly FactInput[] {
  const model = humidityProbeModel?.model?.value.heater?.value;
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
