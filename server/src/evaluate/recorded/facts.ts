/** What a recording says against the envelope of its space, as facts. */

import { COLDEST_POINT_CELSIUS } from '../../physics/air/dew-point.ts';
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import type { FactInput, KnownFact } from '../facts/fact.ts';
import type { SpaceEvaluation } from '../space.ts';
import { boundOf, dimensionOfBounded, titleOfBounded } from './bounds.ts';
import type { Excess, RecordingSummary } from './summary.ts';
import type { VisitedRecording } from './visited-recording.ts';

/** A bound of an envelope that was passed. */
export interface PassedBound {
  readonly phase: string | undefined;
  readonly excess: Excess;
  /** The farthest value beyond the bound. */
  readonly farthest: KnownFact;
}

/** The share of its time that the recording lies outside every envelope of its space. */
export function shareOutside({ log }: VisitedRecording, { outside }: RecordingSummary): KnownFact {
  return {
    id: 'recording/share-outside',
    title: 'time of the recording outside the envelope',
    dimension: 'percentage',
    value: outside.share,
    inputs: [{ label: 'recording', text: log.value, origin: log.origin }],
    relation:
      'time of the rows outside every phase over the time of all rows with a value; each row stands until the next',
    formulas: [],
    notes: [],
  };
}

/** The bounds that were passed, the one passed longest first. */
export function passedBounds(
  { log, space, basis }: VisitedRecording,
  { outside }: RecordingSummary,
  siteFile: string,
): readonly PassedBound[] {
  const passed = outside.envelopes.flatMap(({ phase, excesses }) =>
    excesses.map((excess): PassedBound => {
      const { quantity, side, farthest, at } = excess;
      const bound = boundInput(space, phase, excess, siteFile);
      return {
        phase,
        excess,
        farthest: {
          id: `recording/${phase === undefined ? '' : `${phase}/`}${quantity}/${side === 'above' ? 'highest' : 'lowest'}`,
          title: `${side === 'above' ? 'highest' : 'lowest'} ${titleOfBounded(quantity)} recorded`,
          dimension: dimensionOfBounded(quantity),
          value: farthest,
          at: {
            phase,
            airCelsius: at.airCelsius,
            relativeHumidity: at.relativeHumidity,
            dewPointCelsius: at.dewPointCelsius ?? COLDEST_POINT_CELSIUS,
            pressure: basis.pressure,
            speed: undefined,
          },
          inputs: [{ label: 'recording', text: log.value, origin: log.origin }, ...bound],
          formulas:
            quantity === 'speed' || quantity === 'air-temperature'
              ? []
              : [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER],
          notes: [`Recorded at ${at.time}.`],
        },
      };
    }),
  );
  return passed.sort((one, other) => other.excess.seconds - one.excess.seconds);
}

function boundInput(
  space: SpaceEvaluation,
  phase: string | undefined,
  { quantity }: Excess,
  file: string,
): readonly FactInput[] {
  const range = boundOf(space, phase, quantity);
  if (range === undefined) return [];
  const { low, high, dimension } = range.value;
  return [{ label: titleOfBounded(quantity), text: showRange(low, high, dimension), origin: range.origin, file }];
}
