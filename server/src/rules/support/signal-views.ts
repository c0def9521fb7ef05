/** Signals together with what the envelope makes of their quantity: what the rules of outputs look at. */

import type { Span } from '../../base/span.ts';
import { isKnown, type KnownFact } from '../../evaluate/facts/fact.ts';
import { broken } from '../../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { highestReported, lowestReported } from '../../evaluate/resolved/report-range.ts';
import type { AnalogueUse, RegisterUse, SignalUse } from '../../evaluate/resolved/signal-use.ts';
import { resolutionLimit, spanUseLimit } from '../../evaluate/signals/limits.ts';
import type { Located } from '../../model/located.ts';
import type { Quantity } from '../../quantity/quantity.ts';

/** A signal of a reported quantity. */
export interface CarriedRange<Use extends SignalUse = SignalUse> {
  readonly use: Use;
  readonly lowest: KnownFact;
  readonly highest: KnownFact;
  /** From the lowest to the highest value. */
  readonly range: Span;
  readonly tolerance: Located<Quantity> | undefined;
}

/** The signals of a point whose quantities it reports and whose range can be computed. */
export function carriedRanges({ signals, facts, point }: PointEvaluation): readonly CarriedRange[] {
  return signals.flatMap((use): CarriedRange[] => {
    const report = point.reports?.value.get(use.quantity);
    const [lowest, highest] = [facts.get(lowestReported(use.quantity)), facts.get(highestReported(use.quantity))];
    if (report === undefined || !isKnown(lowest) || !isKnown(highest)) return [];
    const range = { low: lowest.value, high: highest.value };
    return [{ use, lowest, highest, range, tolerance: report.value.tolerance }];
  });
}

export function isAnalogue(carried: CarriedRange): carried is CarriedRange<AnalogueUse> {
  return carried.use.kind === 'analogue';
}

export function isRegister(carried: CarriedRange): carried is CarriedRange<RegisterUse> {
  return carried.use.kind === 'register';
}

/** The largest error by the resolution of a signal, where it costs more of the tolerance than it may. */
export function coarseResolution(view: PointEvaluation, { use }: CarriedRange): KnownFact | undefined {
  return broken(resolutionLimit(use), view)?.fact;
}

/** What the envelope uses of a span, where that is little and the resolution suffers. */
export function littleUsed(view: PointEvaluation, carried: CarriedRange): KnownFact | undefined {
  const used = broken(spanUseLimit(carried.use), view)?.fact;
  return coarseResolution(view, carried) === undefined ? undefined : used;
}
