import { showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import type { AnalogueUse } from '../evaluate/resolved/signal-use.ts';
import { spanTop } from '../evaluate/signals/limits.ts';
import { holds, widenedSpan } from '../evaluate/signals/signal-proposals.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { setSpan } from './support/signal-fixes.ts';
import { type CarriedRange, carriedRanges, isAnalogue } from './support/signal-views.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'span-too-narrow',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'The envelope reaches beyond the span of an analogue signal.',
  why: 'Beyond the end of its span a signal stands still: the receiver sees the end of the span while the air goes on, and control and records are wrong just where it matters.',
  mend: 'Widen the span, in the transmitter and in the receiver; or narrow the envelope, if the air never goes there.',
  leavesAlone: 'Registers: register-overflow speaks of those. Signals of quantities that are not reported.',
  sources: ['common practice, no source'],
  facts: [lowestReported, highestReported],
  fixes: ['choice'],
  check: {
    point: (view) =>
      carriedRanges(view)
        .filter(isAnalogue)
        .flatMap((carried) => tooNarrow(view, carried)),
  },
};

function tooNarrow(view: PointEvaluation, carried: CarriedRange<AnalogueUse>): readonly FindingDraft[] {
  const { use, lowest, highest, range } = carried;
  const { name, quantity, span } = use;
  if (span === undefined || holds(span.value, range)) return [];
  const beyond = broken(spanTop(use), view)?.fact ?? lowest;
  const { title, dimension } = quantityInfo(quantity);
  const shown = showRange(span.value.low, span.value.high, dimension);
  return [
    {
      message: () =>
        `The ${title} runs from ${showFact(lowest)} to ${showFact(highest)}${inCorner(beyond)}, beyond the span of ${name}, ${shown}: the signal stands still at its end. Widen the span.`,
      origin: span.origin,
      facts: [lowest, highest],
      related: () => worstPhase(view.space, beyond),
      fixes: () => setSpan(use, widenedSpan(use, range), 'Widen'),
    },
  ];
}
