/** A point beside its file: its section, its findings, what is to be seen when all is right, its uncertainties, its past. */
import type { Analysis } from '../analysis/analysis.ts';
import type { MarkupElement } from '../base/markup.ts';
import { upperFirst } from '../base/words.ts';
import type { ReportBudgets } from '../evaluate/budget/uncertainty.ts';
import { furtherSentences } from '../evaluate/budget/words.ts';
import type { History } from '../evaluate/history/history.ts';
import { historySentences } from '../evaluate/history/words.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { budgetBars } from '../pictures/plots/budget-bars.ts';
import { historyPlot } from '../pictures/plots/history-plot.ts';
import { sectionDrawing } from '../pictures/section/drawing.ts';
import { sectionOf } from '../pictures/section/section.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { heading, list, paragraph } from './elements.ts';
import { expectedState } from './expected-state.ts';
import { findingList } from './finding-list.ts';
import { nameOf, pointAt } from './point-subject.ts';
import type { ViewKind } from './view.ts';

export const pointView: ViewKind = {
  show({ analysis, offset }) {
    const point = pointAt(analysis, offset);
    if (point === undefined)
      return { title: 'Point', body: [heading(1, 'Point'), paragraph('The file has no point that can be read.')] };
    const findings = analysis.findings.filter(({ subject }) => subject === point.tag);
    return {
      title: `Point: ${point.tag}`,
      body: [
        heading(1, nameOf(point)),
        ...section(point, analysis),
        heading(2, 'Findings'),
        findingList(findings, analysis.file, 'Nothing is found.'),
        heading(2, 'Expected state'),
        expectedState(point),
        ...[...point.budgets.values()].flatMap(uncertainty),
        ...[...point.histories.values()].flatMap((history) => errorsOf(history, point.checkPlan.due?.due)),
      ],
    };
  },
};

function section(point: PointEvaluation, { parsed }: Analysis): readonly MarkupElement[] {
  const drawn = sectionOf(point);
  if (!drawn.ok) return [paragraph(`No section can be drawn: ${drawn.problem}.`)];
  return [
    sectionDrawing(drawn.value, `Section of ${point.tag}`, (origin) => ({
      file: parsed.file,
      start: parsed.rangeOf(origin).start,
    })),
  ];
}

function uncertainty({ quantity, worst, missing }: ReportBudgets): readonly MarkupElement[] {
  const title = heading(2, upperFirst(quantityInfo(quantity).title));
  if (worst === undefined) return [title, paragraph(`No uncertainty can be computed: ${missing ?? 'not known'}.`)];
  return [title, budgetBars(worst), list(furtherSentences(worst))];
}

function errorsOf(history: History, planned: string | undefined): readonly MarkupElement[] {
  const title = heading(2, `Errors of the ${quantityInfo(history.quantity).title} over the years`);
  return [title, historyPlot(history, planned), list(historySentences(history).map((words) => `${words}.`))];
}
