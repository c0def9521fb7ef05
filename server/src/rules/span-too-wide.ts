import { showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import type { AnalogueUse } from '../evaluate/resolved/signal-use.ts';
import { resolutionError, spanUsed } from '../evaluate/signals/signal-facts.ts';
import { narrowedSpan } from '../evaluate/signals/signal-proposals.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { setSpan } from './support/signal-fixes.ts';
import { type CarriedRange, carriedRanges, coarseResolution, isAnalogue, littleUsed } from './support/signal-views.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'span-too-wide',
  group: 'Outputs and alarms',
  severity: 'information',
  title: 'The envelope uses under a quarter of a span, and the resolution suffers for it.',
  why: 'The counts of the receiver are spread over the whole span. Where the air uses little of it, most counts are never seen, and the value moves in steps that cost a part of the tolerance.',
  mend: 'Narrow the span to what the air can do, in the transmitter and in the receiver.',
  leavesAlone: 'Wide spans whose resolution is fine enough all the same: half a count within a tenth of the tolerance.',
  sources: ['JCGM 100:2008, F.2.2.1', 'a quarter of the span, a tenth of the tolerance: common practice, no source'],
  facts: [spanUsed, resolutionError, lowestReported, highestReported],
  fixes: ['choice'],
  check: {
    point: (view) =>
      carriedRanges(view)
        .filter(isAnalogue)
        .flatMap((carried) => tooWide(view, carried)),
  },
};

function tooWide(view: PointEvaluation, carried: CarriedRange<AnalogueUse>): readonly FindingDraft[] {
  const { use, range, tolerance, highest, lowest } = carried;
  const used = littleUsed(view, carried);
  const error = coarseResolution(view, carried);
  const span = use.span;
  if (used === undefined || error === undefined || tolerance === undefined || span === undefined) return [];
  const narrower = narrowedSpan(use, range);
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  return [
    {
      message: () =>
        `The envelope uses ${showFact(used)} of the span of ${use.name}, up to ${showFact(highest)}${inCorner(highest)}, and half a count is then ${showFact(error)} of a tolerance of ${permitted}. Narrow the span.`,
      origin: span.origin,
      facts: [used, error, lowest, highest],
      fixes: () => (narrower === undefined ? [] : setSpan(use, narrower, 'Narrow')),
    },
  ];
}
