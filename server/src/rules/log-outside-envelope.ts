import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { isKnown, showCorner, showFact } from '../evaluate/facts/fact.ts';
import { factOf } from '../evaluate/facts/remembered-facts.ts';
import { boundOf, dimensionOfBounded, titleOfBounded, widenedBounds } from '../evaluate/recorded/bounds.ts';
import { farthestBeyond, passedBounds, shareOutside } from '../evaluate/recorded/facts.ts';
import { leavesEnvelope, type RecordingSummary } from '../evaluate/recorded/summary.ts';
import { showQuantity, showRange, writeRange } from '../quantity/format-quantity.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule, VisitView } from './rule.ts';

export const rule: Rule = {
  name: 'log-outside-envelope',
  group: 'Visits',
  severity: 'warning',
  title: 'A recording leaves the envelope of its space for more than 1 % of its time.',
  why: 'Everything that is computed of a point holds inside the envelope. Air that goes beyond it may wet the sensor, leave the span of a signal or take the reading out of its tolerance, and nothing has looked at that.',
  mend: 'Find out why the air went there: if the process is run so, widen the envelope to what the recording supports and look at what is found then; if it should not be, mend the process and record again.',
  leavesAlone:
    'Recordings that were not read: DuckDB is not installed, the log is not there, or nothing says which of its columns holds what. Time without a value, which the hover of the recording tells.',
  sources: ['common practice, no source'],
  facts: [shareOutside, farthestBeyond.above, farthestBeyond.below],
  fixes: ['choice'],
  check: { visit: outsideEnvelope },
};

function outsideEnvelope({ visited, recording }: VisitView): readonly FindingDraft[] {
  if (visited.state !== 'found' || recording?.answer?.kind !== 'summary') return [];
  const { summary } = recording.answer;
  const summarised = { recording, summary, siteFile: visited.site.file };
  const share = factOf(shareOutside, summarised);
  const [longest] = passedBounds(summarised);
  if (!isKnown(share) || !leavesEnvelope(summary) || longest === undefined) return [];
  const { log, space } = recording;
  const { phase, farthest, excess } = longest;
  const { quantity, side, limit, at } = excess;
  const bound = showQuantity(limit, dimensionOfBounded(quantity));
  const corner = farthest.at === undefined ? '' : ` (${showCorner(farthest.at)})`;
  const written = boundOf(space, phase, quantity);
  return [
    {
      message: () =>
        `The recording lies outside the envelope of ${space.id} for ${showFact(share)} of its time, longest with the ${titleOfBounded(quantity)} ${side} ${bound}, ${side === 'above' ? 'up' : 'down'} to ${showFact(farthest)} at ${at.time}${corner}. Find out why, or widen the envelope if the process is run so.`,
      origin: log.origin,
      subject: space.id,
      facts: [share, farthest],
      related: () =>
        written === undefined
          ? []
          : [{ message: 'This bound was passed.', origin: written.origin, file: visited.site.file }],
      fixes: () => widenEnvelope(space, summary, visited.site.file),
    },
  ];
}

function widenEnvelope(space: SpaceEvaluation, summary: RecordingSummary, file: string): readonly FixDraft[] {
  const bounds = widenedBounds(space, summary);
  const shown = bounds.map(
    ({ quantity, low, high }) => `${titleOfBounded(quantity)} ${showRange(low, high, dimensionOfBounded(quantity))}`,
  );
  const edits = bounds.map(({ written, low, high }) => {
    const edit = replaceScalar(written.cursor, writeRange(low, high, written.value.dimension));
    return edit === undefined ? undefined : { ...edit, file };
  });
  return [{ title: `Widen the envelope to what the recording supports: ${shown.join(', ')}`, kind: 'choice', edits }];
}
