/** One envelope evaluated: whether it can exist, what of it can, and which published range it leaves. */
import { enhancementLeavesFormula } from '../../physics/air/enhancement.ts';
import { saturationFormulaOverWater } from '../../physics/air/saturation.ts';
import { checkValidity, type OutsideFormula } from '../../physics/formula.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Corner } from '../facts/fact.ts';
import { type PhaseEnvelope, stateAt } from './envelope.ts';
import { type Impossibility, impossibilityOf, type SaturationCut, saturationCut } from './envelope-limits.ts';
import { type SampledEnvelope, sampleEnvelope } from './extreme.ts';

export interface PhaseEvaluation {
  readonly envelope: PhaseEnvelope;
  readonly impossible: Impossibility | undefined;
  readonly cut: SaturationCut | undefined;
  /** Absent where the envelope is impossible, or so hot or cold that nothing is computed. */
  readonly sampled: SampledEnvelope | undefined;
  readonly leaves: FormulaLeft | undefined;
}

/** A formula whose published range the envelope leaves, and the value with which it does. */
export interface FormulaLeft {
  readonly outside: OutsideFormula;
  /** °C, or Pa where it is left by its pressure. */
  readonly value: number;
  /** None where no state of air can be computed. */
  readonly at: Corner | undefined;
}

export function evaluatePhase(envelope: PhaseEnvelope): PhaseEvaluation {
  const uncomputable = saturationLeft(envelope);
  const impossible = uncomputable === undefined ? impossibilityOf(envelope) : undefined;
  if (uncomputable !== undefined || impossible !== undefined)
    return { envelope, impossible, cut: undefined, sampled: undefined, leaves: uncomputable };
  return {
    envelope,
    impossible,
    cut: saturationCut(envelope),
    sampled: sampleEnvelope(envelope),
    leaves: enhancementLeft(envelope),
  };
}

/** Beyond the saturation formulas themselves no state of air can be computed. */
function saturationLeft(envelope: PhaseEnvelope): FormulaLeft | undefined {
  const { low, high } = envelope.temperature.value;
  for (const celsius of [high, low]) {
    const outside = checkValidity(saturationFormulaOverWater(celsius), { celsius });
    if (outside !== undefined) return { outside, value: celsius, at: undefined };
  }
  return undefined;
}

/** The hottest, coldest and driest air of the box and the ends of its pressure tell whether it stays inside. */
function enhancementLeft(envelope: PhaseEnvelope): FormulaLeft | undefined {
  const { temperature, pressure } = envelope;
  const { low, high } = temperature.value;
  const ends = [
    [high, pressure.low],
    [low, pressure.low],
    [high, pressure.high],
  ] as const;
  for (const [celsius, pascal] of ends) {
    const outside = enhancementLeavesFormula(celsius, pascal, 'water');
    if (outside === undefined) continue;
    const at = cornerOf(stateAt(envelope, celsius, 1, pascal), envelope.phase);
    return formulaLeft(outside, celsius, at);
  }
  const driest = lowestDewPointWritten(envelope);
  const outside = enhancementLeavesFormula(driest, pressure.low, 'water');
  if (outside === undefined) return undefined;
  const at = cornerOf(stateAt(envelope, low, 0, pressure.low), envelope.phase);
  return formulaLeft(outside, driest, at);
}

/** The lowest dew point in °C that the vapour pressure is computed from; the air temperature where it is from none. */
function lowestDewPointWritten({ humidityKey, humidity, temperature }: PhaseEnvelope): number {
  const coldest = temperature.value.low;
  if (humidityKey === 'dew-point') return Math.min(coldest, humidity.value.low);
  return humidityKey === 'dew-point-depression' ? coldest - humidity.value.high : coldest;
}

function formulaLeft(outside: OutsideFormula, celsius: number, at: Corner): FormulaLeft {
  return { outside, value: outside.argument === 'pressure' ? outside.value : celsius, at };
}
