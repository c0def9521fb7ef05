/** What can be drawn of a point: its section, the uncertainty of its reports, its history. */
import type { PointEvaluation } from '../evaluate/point.ts';
import { budgetBars } from '../pictures/plots/budget-bars.ts';
import { historyPlot } from '../pictures/plots/history-plot.ts';
import { sectionDrawing } from '../pictures/section/drawing.ts';
import { sectionOf } from '../pictures/section/section.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { Block } from './document.ts';

export function sectionPicture(point: PointEvaluation): readonly Block[] {
  const section = sectionOf(point);
  if (!section.ok) return [];
  const drawing = sectionDrawing(section.value, `Section of ${point.tag}`, () => undefined);
  return [{ kind: 'picture', drawing, caption: 'Section through the wall and the probes, to scale.' }];
}

export function budgetPictures({ budgets }: PointEvaluation): readonly Block[] {
  return [...budgets].flatMap(([quantity, { worst }]): readonly Block[] => {
    const caption = `Where the uncertainty of the ${quantityInfo(quantity).title} comes from.`;
    return worst === undefined ? [] : [{ kind: 'picture', drawing: budgetBars(worst), caption }];
  });
}

export function historyPictures({ histories, checkPlan }: PointEvaluation): readonly Block[] {
  return [...histories].map(([quantity, history]) => ({
    kind: 'picture',
    drawing: historyPlot(history, checkPlan.due?.due),
    caption: `Errors of the ${quantityInfo(quantity).title} found at checks, and where they lead.`,
  }));
}
