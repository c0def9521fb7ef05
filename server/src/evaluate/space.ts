/** Facts of one space: its pressure, and what its envelopes make of every quantity. */
import { valueIfOk } from '../base/outcome.ts';
import type { Located } from '../model/located.ts';
import type { Space } from '../model/model-types.generated.ts';
import type { OutsideFormula } from '../physics/formula.ts';
import type { AirState } from '../physics/moist-air.ts';
import type { Dimension } from '../quantity/dimension.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantity-names.ts';
import type { Origin } from '../syntax/nodes.ts';
import { cornerOf, formulaLeftBy, wordsOfOutside } from './corner.ts';
import {
  type Impossibility,
  impossibilityOf,
  type PhaseEnvelope,
  phaseEnvelopes,
  type Span,
  saturationCut,
} from './envelope.ts';
import { extremeOf, type SampledEnvelope, sampleEnvelope } from './extreme.ts';
import type { Fact, FactInput } from './fact.ts';
import { derivationOf, quantityValue } from './quantity-value.ts';
import type { SiteSettings } from './site-settings.ts';

export interface PhaseEvaluation {
  readonly envelope: PhaseEnvelope;
  readonly impossible: Impossibility | undefined;
  readonly cut: ReturnType<typeof saturationCut>;
  /** Absent where the envelope is impossible. */
  readonly sampled: SampledEnvelope | undefined;
  readonly outside: OutsideFormula | undefined;
}

export interface SpaceEvaluation {
  readonly id: string;
  readonly keyOrigin: Origin;
  readonly located: Located<Space>;
  readonly settings: SiteSettings;
  readonly pressure: Span;
  /** False where the pressure is only that of the site's altitude. */
  readonly pressureGiven: boolean;
  readonly phases: readonly PhaseEvaluation[];
  /** True where every envelope can be computed with. */
  readonly complete: boolean;
  readonly quantityFacts: Map<string, Fact>;
}

export function evaluateSpace(
  id: string,
  keyOrigin: Origin,
  located: Located<Space>,
  settings: SiteSettings,
): SpaceEvaluation {
  const space = located.value;
  const gauge = space.pressure?.value.gauge === true ? settings.airPressure.value : 0;
  const given = space.pressure?.value;
  const { airPressure } = settings;
  const pressure =
    given === undefined
      ? { low: airPressure.value, high: airPressure.value }
      : { low: given.low + gauge, high: given.high + gauge };
  const envelopes = pressure.low > 0 ? phaseEnvelopes(space, pressure) : [];
  const phases = envelopes.map(evaluatePhase);
  const written = space.phases?.value.size ?? (space.air === undefined ? 0 : 1);
  const complete =
    phases.length > 0 && phases.length === written && phases.every((phase) => phase.sampled !== undefined);
  return {
    id,
    keyOrigin,
    located,
    settings,
    pressure,
    pressureGiven: given !== undefined,
    phases,
    complete,
    quantityFacts: new Map(),
  };
}

function evaluatePhase(envelope: PhaseEnvelope): PhaseEvaluation {
  const impossible = impossibilityOf(envelope);
  const sampled = impossible === undefined ? sampleEnvelope(envelope) : undefined;
  let outside: OutsideFormula | undefined;
  for (const { state } of sampled?.samples ?? []) outside ??= formulaLeftBy(state);
  return {
    envelope,
    impossible,
    cut: impossible === undefined ? saturationCut(envelope) : undefined,
    sampled,
    outside,
  };
}

/** The phases that can be computed with. */
export function* sampledPhases(
  space: SpaceEvaluation,
): Generator<{ phase: PhaseEvaluation; sampled: SampledEnvelope }> {
  for (const phase of space.phases) if (phase.sampled !== undefined) yield { phase, sampled: phase.sampled };
}

export interface WorstState {
  readonly value: number;
  readonly state: AirState;
  readonly phase: PhaseEvaluation;
}

/** The highest or lowest value of a function over all phases, with the phase and the state. */
export function worstOverPhases(
  space: SpaceEvaluation,
  direction: 'highest' | 'lowest',
  valueAt: (state: AirState) => number | undefined,
): WorstState | undefined {
  let worst: WorstState | undefined;
  for (const { phase, sampled } of sampledPhases(space)) {
    const found = extremeOf(sampled, direction, valueAt);
    if (found === undefined) continue;
    const better =
      worst === undefined || (direction === 'highest' ? found.value > worst.value : found.value < worst.value);
    if (better) worst = { ...found, phase };
  }
  return worst;
}

/** The highest or lowest value that a quantity takes in a space. */
export function quantityExtreme(
  space: SpaceEvaluation,
  name: QuantityName,
  direction: 'highest' | 'lowest',
  otherPressure?: number,
): Fact {
  const id = `${name}/${direction}`;
  const key = otherPressure === undefined ? id : `${id}@${otherPressure}`;
  const known = space.quantityFacts.get(key);
  if (known !== undefined) return known;
  const fact = computeExtreme(space, id, name, direction, otherPressure);
  space.quantityFacts.set(key, fact);
  return fact;
}

function computeExtreme(
  space: SpaceEvaluation,
  id: string,
  name: QuantityName,
  direction: 'highest' | 'lowest',
  otherPressure: number | undefined,
): Fact {
  const info = quantityInfo(name);
  const { relation, formulas } = derivationOf(name);
  const worst = worstOverPhases(space, direction, (state) => valueIfOk(quantityValue(name, state, otherPressure)));
  const base = { id, title: `${direction} ${info.title}`, dimension: info.dimension, relation, formulas };
  if (worst === undefined)
    return { ...base, value: undefined, missing: 'no state of the envelope has it', inputs: [], notes: [] };
  return {
    ...base,
    value: worst.value,
    at: cornerOf(worst.state, worst.phase.envelope.phase),
    inputs: envelopeInputs(space, worst.phase),
    notes: notesOf(worst.state),
  };
}

/** What every fact of an envelope is computed from. */
export function envelopeInputs(space: SpaceEvaluation, phase: PhaseEvaluation): readonly FactInput[] {
  const { envelope } = phase;
  const range = (
    label: string,
    of: { low: number; high: number },
    dimension: Dimension,
    origin?: Origin,
  ): FactInput => ({
    label,
    text: showRange(of.low, of.high, dimension),
    ...(origin === undefined ? {} : { origin }),
  });
  const { temperature, humidity, humidityKey } = envelope;
  return [
    range('air temperature', temperature.value, 'temperature', temperature.origin),
    range(
      humidityKey === 'humidity' ? 'relative humidity' : humidityKey.replace(/-/g, ' '),
      humidity.value,
      humidity.value.dimension,
      humidity.origin,
    ),
    pressureInput(space),
  ];
}

export function pressureInput(space: SpaceEvaluation): FactInput {
  const given = space.located.value.pressure;
  const text = showRange(space.pressure.low, space.pressure.high, 'pressure');
  if (given !== undefined) return { label: 'pressure', text, origin: given.origin };
  const { altitude } = space.settings;
  const where =
    altitude === undefined
      ? 'sea level, ISO 2533'
      : `${showQuantity(altitude.value.value, 'length')} altitude, ISO 2533`;
  return {
    label: 'pressure',
    text: `${text} (${where})`,
    ...(altitude === undefined ? {} : { origin: altitude.origin }),
  };
}

export function notesOf(state: AirState): readonly string[] {
  const outside = formulaLeftBy(state);
  return outside === undefined ? [] : [wordsOfOutside(outside)];
}
