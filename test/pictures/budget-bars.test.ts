import { describe, expect, it } from 'vitest';
import { type MarkupElement, writeMarkup } from '../../server/src/base/markup.ts';
import { json } from '../../server/src/cli/formats/json.ts';
import type { Budget } from '../../server/src/evaluate/budget/budget.ts';
import { budgetBars } from '../../server/src/pictures/plots/budget-bars.ts';
import { showQuantity } from '../../server/src/quantity/format-quantity.ts';
import { quantityInfo } from '../../server/src/quantity/quantities.ts';
import { assessedPoint, worstBudget } from '../evaluate/assessed-point.ts';
import { analysisOf, SAMPLE_NAMES, sampleWorkspace } from '../samples/sample-files.ts';
import { only, textOf, withClass } from './drawn.ts';

const WORKSPACE = sampleWorkspace();
const BUDGETS = SAMPLE_NAMES.filter((name) => name.endsWith('.dewsite.yaml')).flatMap((name) => {
  const analysis = analysisOf(WORKSPACE, name);
  const points = analysis.content.kind === 'site' ? [...analysis.content.site.points.values()] : [];
  return points.flatMap(({ tag, budgets }) =>
    [...budgets.values()].flatMap(({ worst }) => (worst === undefined ? [] : [{ name, tag, budget: worst }])),
  );
});

describe('the bars of every budget of the samples', () => {
  it.each(BUDGETS)('$tag $budget.quantity: the shares fill the whole, the largest first', ({ budget }) => {
    const bars = withClass(budgetBars(budget), 'contribution').map((row) => widthOf(only(withClass(row, 'bar'))));
    // 100 % is 192 px wide; contributions of less than 0.01 % each are not listed.
    expect(Math.abs(bars.reduce((sum, width) => sum + width, 0) / 192 - 1)).toBeLessThan(0.002);
    expect(bars).toEqual(bars.toSorted((one, other) => other - one));
  });

  it.each(BUDGETS)('$tag $budget.quantity: each row has the numbers of its contribution', ({ budget }) => {
    const { difference } = quantityInfo(budget.quantity);
    const rows = withClass(budgetBars(budget), 'contribution').map((row) => row.children.map(textOf));
    expect(rows).toEqual(
      budget.contributions.map((part) => [
        part.title,
        '',
        showQuantity(part.share, 'percentage'),
        showQuantity(part.standardUncertainty, part.dimension),
        showQuantity(part.resultUncertainty, difference),
      ]),
    );
  });

  it.each(BUDGETS)('$tag $budget.quantity: the expanded uncertainty is that of the JSON', ({ name, tag, budget }) => {
    const fact = jsonOf(name).find(({ subject }) => subject === tag)?.facts[`${budget.quantity}/expanded-uncertainty`];
    expect(textOf(budgetBars(budget))).toContain(`expanded uncertainty ${fact?.text}, k = 2`);
  });
});

describe('the tolerance', () => {
  const budgetWith = (tolerance: string): Budget =>
    worstBudget(
      assessedPoint({
        space: '{pressure: 100 kPa, air: {temperature: 18 .. 22 degC, humidity: 40 .. 60 %RH}}',
        point: `humidity-probe: {model: heated, mounting: {insertion: 200 mm}}, reports: {relative-humidity: ${tolerance}}`,
      }),
      'relative-humidity',
    );

  it('is drawn with a guard band of the expanded uncertainty, which leaves the rest to errors (ILAC-G8, w = U)', () => {
    const budget = budgetWith('{tolerance: 5 %RH}');
    const drawing = budgetBars(budget);
    const [accepted, guard, uncertainty] = ['accepted', 'guard-box', 'expanded-uncertainty'].map((part) =>
      widthOf(only(withClass(drawing, part))),
    );
    expect(guard).toBeCloseTo(uncertainty ?? 0, 1);
    expect((accepted ?? 0) / (guard ?? 1)).toBeCloseTo(0.05 / budget.expandedUncertainty - 1, 2);
  });

  it('smaller than the uncertainty leaves nothing, and the drawing says so', () => {
    const drawing = budgetBars(budgetWith('{tolerance: 0.5 %RH}'));
    expect(widthOf(only(withClass(drawing, 'accepted')))).toBe(0);
    expect(textOf(drawing)).toContain('The guard band takes all of the tolerance');
  });

  it('may be missing', () => {
    expect(textOf(budgetBars(budgetWith('{}')))).toContain('no tolerance is given');
  });
});

it('the one change that helps most is marked where it would leave the uncertainty', () => {
  const [first] = BUDGETS;
  const { improvement, expandedUncertainty, quantity } = first?.budget ?? {};
  if (first === undefined || improvement === undefined || quantity === undefined) throw new Error('no budget');
  const drawing = budgetBars(first.budget);
  const mark = only(withClass(drawing, 'improved'));
  const share = improvement.expandedUncertainty / (expandedUncertainty ?? 1);
  expect((Number(mark.attributes.x1) - 24) / widthOf(only(withClass(drawing, 'expanded-uncertainty')))).toBeCloseTo(
    share,
    3,
  );
  const left = showQuantity(improvement.expandedUncertainty, quantityInfo(quantity).difference);
  expect(textOf(drawing)).toContain(`${left} with the best change`);
});

it('the name of a terminal becomes text and nothing else', () => {
  const [first] = BUDGETS;
  const [part] = first?.budget.contributions ?? [];
  if (first === undefined || part === undefined) throw new Error('no budget');
  const written = writeMarkup(budgetBars({ ...first.budget, contributions: [{ ...part, title: '<b>"&' }] }));
  expect(written).toContain('&lt;b&gt;&quot;&amp;');
  expect(written).not.toContain('<b>');
});

/** px across. */
function widthOf({ attributes }: MarkupElement): number {
  return Number(attributes.width);
}

interface SubjectJson {
  readonly subject: string;
  readonly facts: Readonly<Record<string, { readonly text?: string }>>;
}

function jsonOf(name: string): readonly SubjectJson[] {
  const analysis = analysisOf(WORKSPACE, name);
  const { findings, accepted } = analysis;
  const context = { colour: false, fileNamed: (file: string) => WORKSPACE.parsed(file) };
  return (JSON.parse(json.ofFile({ path: name, analysis, findings, accepted }, context)) as { subjects: SubjectJson[] })
    .subjects;
}
