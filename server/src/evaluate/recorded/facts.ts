/** What a recording says against the envelope of its space, as facts. */

import { COLDEST_POINT_CELSIUS } from '../../physics/air/dew-point.ts';
import { ENHANCEMENT_OVER_WATER } from '../../physics/air/enhancement.ts';
import { SATURATION_OVER_WATER } from '../../physics/air/saturation.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { declaredFact, factFamily } from '../facts/declared-fact.ts';
import { type FactInput, isKnown, type KnownFact } from '../facts/fact.ts';
import { factOf } from '../facts/remembered-facts.ts';
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

/** A recording with what was gathered of it. */
interface SummarisedRecording {
  readonly recording: VisitedRecording;
  readonly summary: RecordingSummary;
  readonly siteFile: string;
}

/** The share of its time that the recording lies outside every envelope of its space. */
export const shareOutside = declaredFact('recording/share-outside', {
  title: 'time of the recording outside the envelope',
  dimension: 'percentage',
  compute: ({ recording, summary }: SummarisedRecording) => ({
    value: summary.outside.share,
    derivation: () => ({
      inputs: [recordingInput(recording)],
      relation:
        'time of the rows outside every phase over the time of all rows with a value; each row stands until the next',
      formulas: [],
    }),
  }),
});

interface PassedExcess {
  readonly phase: string | undefined;
  readonly excess: Excess;
}

/** The farthest value beyond a bound that was passed, on either side of the envelope. */
export const farthestBeyond = { above: farthest('highest'), below: farthest('lowest') };

function farthest(end: 'highest' | 'lowest') {
  const idOf = ({ phase, excess: { quantity } }: PassedExcess): string =>
    `recording/${phase === undefined ? '' : `${phase}/`}${quantity}/${end}`;
  return factFamily(idOf, `recording/PHASE/QUANTITY/${end}`, {
    title: ({ excess: { quantity } }) => `${end} ${titleOfBounded(quantity)} recorded`,
    dimension: ({ excess }) => dimensionOfBounded(excess.quantity),
    compute: ({ recording, siteFile }: SummarisedRecording, { phase, excess }) => {
      const { quantity, at } = excess;
      const { airCelsius, relativeHumidity, dewPointCelsius = COLDEST_POINT_CELSIUS } = at;
      const { pressure } = recording.basis;
      return {
        value: excess.farthest,
        at: { phase, airCelsius, relativeHumidity, dewPointCelsius, pressure, speed: undefined },
        derivation: () => ({
          inputs: [recordingInput(recording), ...boundInput(recording.space, phase, excess, siteFile)],
          formulas:
            quantity === 'speed' || quantity === 'air-temperature'
              ? []
              : [SATURATION_OVER_WATER, ENHANCEMENT_OVER_WATER],
          notes: [`Recorded at ${at.time}.`],
        }),
      };
    },
  });
}

/** The bounds that were passed, the one passed longest first. */
export function passedBounds(summarised: SummarisedRecording): readonly PassedBound[] {
  return summarised.summary.outside.envelopes
    .flatMap(({ phase, excesses }) => excesses.map((excess) => ({ phase, excess })))
    .toSorted((one, other) => other.excess.seconds - one.excess.seconds)
    .flatMap((passed) => {
      const value = factOf(farthestBeyond[passed.excess.side](passed), summarised);
      return isKnown(value) ? [{ ...passed, farthest: value }] : [];
    });
}

function recordingInput({ log }: VisitedRecording): FactInput {
  return { label: 'recording', text: log.value, origin: log.origin };
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
