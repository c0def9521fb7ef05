import { showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { AnalogueUse, RegisterUse } from '../evaluate/resolved/signal-use.ts';
import { RESOLUTION_SHARE } from '../evaluate/signals/limits.ts';
import { resolutionError } from '../evaluate/signals/signal-facts.ts';
import { finerScale, narrowedSpan, resolutionErrorWith } from '../evaluate/signals/signal-proposals.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { setSpan } from './support/signal-fixes.ts';
import {
  type CarriedRange,
  carriedRanges,
  coarseResolution,
  isAnalogue,
  isRegister,
  littleUsed,
} from './support/signal-views.ts';

export const rule: Rule = {
  name: 'resolution-coarse',
  group: 'Outputs and alarms',
  severity: 'warning',
  title: 'The resolution of a channel or register costs over a tenth of the tolerance.',
  why: 'A value that moves in coarse steps is off by up to half a step, however good the probe is, and control loops hunt from one step to the next.',
  mend: 'Use a finer scale, a narrower span, or an input with more bits.',
  leavesAlone: 'Spans of which little is used: span-too-wide speaks of those. Reports without a tolerance.',
  sources: ['JCGM 100:2008, F.2.2.1', 'a tenth of the tolerance: common practice, no source'],
  facts: [resolutionError],
  fixes: ['choice'],
  check: { point: (view) => carriedRanges(view).flatMap((carried) => tooCoarse(view, carried)) },
};

function tooCoarse(view: PointEvaluation, carried: CarriedRange): readonly FindingDraft[] {
  const { use, tolerance } = carried;
  const error = coarseResolution(view, carried);
  if (error === undefined || tolerance === undefined || littleUsed(view, carried) !== undefined) return [];
  const { title } = quantityInfo(use.quantity);
  const permitted = showQuantity(tolerance.value.value, tolerance.value.dimension);
  const signal = use.located.value;
  const place = signal.kind === 'register' ? signal.scale : signal.span;
  return [
    {
      message: () =>
        `Half a count of ${use.name} is ${showFact(error)}, over a tenth of the tolerance of the ${title}, ${permitted}. Resolve it more finely.`,
      origin: place?.origin ?? use.located.origin,
      facts: [error],
      related: () => [{ message: 'The tolerance is here.', origin: tolerance.origin }],
      fixes: () => finer(carried, tolerance.value.value * RESOLUTION_SHARE),
    },
  ];
}

function finer(carried: CarriedRange, permitted: number): readonly FixDraft[] {
  if (isRegister(carried)) return scaleDown(carried, permitted);
  return isAnalogue(carried) ? narrower(carried, permitted) : [];
}

function scaleDown({ use, range }: CarriedRange<RegisterUse>, permitted: number): readonly FixDraft[] {
  const text = finerScale(use, range, permitted);
  const { scale } = use.signal;
  if (text === undefined || scale === undefined) return [];
  const title = `Use a scale of ${text}; the controller must be told`;
  return [{ title, kind: 'choice', edits: [replaceScalar(scale.cursor, text)] }];
}

function narrower({ use, range }: CarriedRange<AnalogueUse>, permitted: number): readonly FixDraft[] {
  const span = narrowedSpan(use, range);
  const error = span === undefined ? undefined : resolutionErrorWith(use, span);
  return span !== undefined && error !== undefined && error <= permitted ? setSpan(use, span, 'Narrow') : [];
}
