/** The uncertainty budget of one reported value at one state of the air (JCGM 100), as hovers and reports show it. */

import type { AirState } from '../../physics/air/moist-air.ts';
import { combineContributions } from '../../physics/metrology/budget.ts';
import { type StatedAs, standardUncertaintyOf } from '../../physics/metrology/standard-uncertainty.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Corner, FactInput } from '../facts/fact.ts';
import { bestImprovement, type Improvement } from './improvement.ts';
import {
  type MeasuredInput,
  type Measurement,
  NO_DEVIATION,
  type PerInput,
  reportedValue,
  type SensedState,
  sensedState,
  sensitivities,
} from './measurement.ts';
import { type GatheredSources, type SourceKind, sourceInfo, type UncertaintySource } from './uncertainty-source.ts';

export interface BudgetContribution {
  readonly kind: SourceKind;
  /** With the terminal or register where it is of a signal: 'resolution of the receiver of AO1'. */
  readonly title: string;
  readonly enters: MeasuredInput;
  /** Of the standard uncertainty. */
  readonly dimension: Dimension;
  readonly standardUncertainty: number;
  readonly statedAs: StatedAs;
  /** Change of the reported value per unit of the input. */
  readonly sensitivity: number;
  /** |sensitivity| × standard uncertainty, in the difference of the quantity. */
  readonly resultUncertainty: number;
  /** Part of the variance of the reported value. */
  readonly share: number;
  /** Made when somebody asks for them. */
  readonly inputs: () => readonly FactInput[];
}

export interface Budget {
  readonly quantity: QuantityName;
  readonly at: Corner;
  readonly state: AirState;
  readonly measurement: Measurement;
  readonly value: number;
  /** In the difference of the quantity, as all uncertainties below. */
  readonly standardUncertainty: number;
  readonly coverageFactor: number;
  readonly expandedUncertainty: number;
  /** Largest share first. */
  readonly contributions: readonly BudgetContribution[];
  /** The signal that is counted: of those that carry the quantity, the least certain. */
  readonly signal: string | undefined;
  readonly improvement: Improvement | undefined;
  readonly tolerance: number | undefined;
  readonly leftOut: readonly string[];
}

/** Contributions of a smaller part of the variance are not listed: they change no digit that is shown. */
const NEGLIGIBLE_SHARE = 1e-4;

/** The variance of the reported value at a state, or undefined where the quantity or an accuracy ends. */
export function varianceAt(
  measurement: Measurement,
  sources: readonly UncertaintySource[],
  state: AirState,
): number | undefined {
  const sensed = sensedState(state, measurement.rise);
  const per = sensitivities(measurement, sensed);
  if (per === undefined) return undefined;
  let variance = 0;
  for (const { enters, statedAt } of sources) {
    const stated = statedAt(sensed);
    if (stated === undefined) return undefined;
    variance += (per[enters] * standardUncertaintyOf(stated.halfWidth, stated.statedAs)) ** 2;
  }
  return variance;
}

export interface BudgetTerms {
  readonly coverageFactor: number;
  readonly tolerance: number | undefined;
  readonly signal: string | undefined;
}

export function budgetAt(
  measurement: Measurement,
  { sources, leftOut }: GatheredSources,
  state: AirState,
  phase: string | undefined,
  { coverageFactor, tolerance, signal }: BudgetTerms,
): Budget | undefined {
  const { quantity } = measurement;
  const sensed = sensedState(state, measurement.rise);
  const per = sensitivities(measurement, sensed);
  const value = reportedValue(measurement, sensed, NO_DEVIATION);
  if (per === undefined || value === undefined) return undefined;
  const { contributions, standardUncertainty } = combined(quantity, sources, sensed, per);
  const expandedUncertainty = coverageFactor * standardUncertainty;
  return {
    quantity,
    at: cornerOf(state, phase),
    state,
    measurement,
    value,
    standardUncertainty,
    coverageFactor,
    expandedUncertainty,
    contributions,
    signal,
    improvement: bestImprovement(contributions, expandedUncertainty),
    tolerance,
    leftOut,
  };
}

function combined(quantity: QuantityName, sources: readonly UncertaintySource[], sensed: SensedState, per: PerInput) {
  const terms = sources.flatMap((source) => {
    const stated = source.statedAt(sensed);
    if (stated === undefined) return [];
    const { halfWidth, statedAs } = stated;
    const standardUncertainty = standardUncertaintyOf(halfWidth, statedAs);
    return { name: titleOf(source), standardUncertainty, sensitivity: per[source.enters], source, statedAs };
  });
  const { shares, standardUncertainty } = combineContributions(terms);
  const contributions = shares.flatMap(({ contribution, resultUncertainty, share }): BudgetContribution[] => {
    if (share < NEGLIGIBLE_SHARE) return [];
    const { name, source, statedAs, sensitivity } = contribution;
    const { kind, enters } = source;
    return [
      {
        kind,
        title: name,
        enters,
        dimension: dimensionOf(enters, quantity),
        standardUncertainty: contribution.standardUncertainty,
        statedAs,
        sensitivity,
        resultUncertainty,
        share,
        inputs: () => source.inputsAt(sensed),
      },
    ];
  });
  return { standardUncertainty, contributions };
}

function titleOf({ kind, signal }: UncertaintySource): string {
  const { title } = sourceInfo(kind);
  return signal === undefined ? title : `${title} (${signal})`;
}

function dimensionOf(input: MeasuredInput, quantity: QuantityName): Dimension {
  switch (input) {
    case 'sensor-humidity':
      return 'relative-humidity';
    case 'sensor-temperature':
    case 'air-temperature':
      return 'temperature-difference';
    case 'pressure':
      return 'pressure';
    case 'reported-value':
      return quantityInfo(quantity).difference;
  }
}
