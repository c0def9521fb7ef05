import { showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import type { RegisterUse } from '../evaluate/resolved/signal-use.ts';
import { registerTop } from '../evaluate/signals/limits.ts';
import { coarserScale, formatsFor, holds } from '../evaluate/signals/signal-proposals.ts';
import { showRange } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { appendPair, replaceScalar } from '../syntax/edit.ts';
import type { FindingDraft, FixDraft, Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { type CarriedRange, carriedRanges, isRegister } from './support/signal-views.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'register-overflow',
  group: 'Outputs and alarms',
  severity: 'error',
  title: 'The envelope does not fit into a register with its format and scale.',
  why: 'A number that does not fit wraps around, or stands still at the end of its format. The controller then acts on a value that is far off, and nothing says so.',
  mend: 'Use a coarser scale, or a format that holds more, in the device and in the controller.',
  leavesAlone: 'Registers whose format or scale is not given, and floats, which hold everything.',
  sources: ['Ranges of two’s-complement integers of 16 and 32 bits'],
  facts: [lowestReported, highestReported],
  fixes: ['choice'],
  check: {
    point: (view) =>
      carriedRanges(view)
        .filter(isRegister)
        .flatMap((carried) => overflowing(view, carried)),
  },
};

function overflowing(view: PointEvaluation, carried: CarriedRange<RegisterUse>): readonly FindingDraft[] {
  const { use, lowest, range } = carried;
  const { name, quantity, carries, signal, format } = use;
  if (carries === undefined || signal.scale === undefined || holds(carries, range)) return [];
  const beyond = broken(registerTop(use), view)?.fact ?? lowest;
  const { title, dimension } = quantityInfo(quantity);
  const shown = showRange(carries.low, carries.high, dimension);
  return [
    {
      message: () =>
        `The ${title} reaches ${showFact(beyond)}${inCorner(beyond)}, and ${name} holds ${shown} as ${format} with this scale: beyond that the value wraps around or stands still. Use a coarser scale or a larger format.`,
      origin: signal.scale.origin,
      facts: [beyond],
      related: () => worstPhase(view.space, beyond),
      fixes: () => [...scaleUp(use, carried), ...otherFormat(use, carried)],
    },
  ];
}

function scaleUp(use: RegisterUse, { range }: CarriedRange): readonly FixDraft[] {
  const text = coarserScale(use, range);
  const { scale } = use.signal;
  if (text === undefined || scale === undefined) return [];
  const title = `Use a scale of ${text}; the controller must be told`;
  return [{ title, kind: 'choice', edits: [replaceScalar(scale.cursor, text)] }];
}

function otherFormat(use: RegisterUse, { range }: CarriedRange): readonly FixDraft[] {
  const { format } = use.signal;
  return formatsFor(use, range).map((other) => ({
    title: `Use the format ${other}; the controller must be told`,
    kind: 'choice',
    edits: [
      format === undefined ? appendPair(use.located.cursor, 'format', other) : replaceScalar(format.cursor, other),
    ],
  }));
}
