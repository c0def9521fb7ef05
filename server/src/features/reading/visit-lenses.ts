/** Above a visit: how many of its readings disagree, and how far the handover of the points that it speaks of has come. */
import type { Analysis } from '../../analysis/analysis.ts';
import { counted } from '../../base/words.ts';
import type { EvaluatedSite } from '../../evaluate/evaluated-site.ts';
import { handoverPlan } from '../../handover/plan.ts';
import { openSteps, recordedSteps } from '../../handover/progress.ts';
import { agrees } from '../../handover/visit-errors.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { errorsIn, visitIn } from '../support/visit-places.ts';

export interface VisitLens {
  readonly above: Origin;
  readonly title: string;
  readonly opens: Origin;
}

export function visitLenses(analysis: Analysis): readonly VisitLens[] {
  const { visit, site } = visitIn(analysis) ?? {};
  if (site === undefined || visit?.header === undefined) return [];
  const above = visit.header.keyOrigin ?? visit.header.origin;
  return [...readingsLens(analysis), ...stepsLens(analysis.file, site)].map((lens) => ({ above, ...lens }));
}

type LensDraft = Omit<VisitLens, 'above'>;

function readingsLens(analysis: Analysis): readonly LensDraft[] {
  const told = errorsIn(analysis).filter(({ error }) => error.enNumber !== undefined);
  const [first] = told;
  if (first === undefined) return [];
  const wrong = told.filter(({ error }) => agrees(error) === false);
  const count = counted(told.length, 'reading');
  const title =
    wrong.length === 0
      ? `${count}, none disagrees`
      : `${wrong.length} of ${count} ${wrong.length === 1 ? 'disagrees' : 'disagree'}`;
  return [{ title, opens: (wrong[0] ?? first).error.reading.origin }];
}

function stepsLens(file: string, site: EvaluatedSite): readonly LensDraft[] {
  const spoken = recordedSteps(site).filter((record) => record.file === file);
  const [first] = spoken;
  if (first === undefined) return [];
  const tags = [...new Set(spoken.map(({ tag }) => tag))];
  const open = tags.flatMap((tag) => openSteps(site, tag)).length;
  const all = handoverPlan(tags.flatMap((tag) => site.points.get(tag) ?? [])).length;
  const opens = (spoken.find(({ done }) => !done) ?? first).entry.keyOrigin;
  return [
    {
      title:
        open === 0
          ? `Handover done, ${all} steps`
          : `${open} of ${all} steps of the handover ${open === 1 ? 'is' : 'are'} open`,
      opens,
    },
  ];
}
