/** Evaluates one point of a site text with the invented models that the fixtures of the rules use. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { Budget } from '../../server/src/evaluate/budget/budget.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';
import type { QuantityName } from '../../server/src/quantity/quantities.ts';
import { factsById } from './facts-by-id.ts';

const SITE = fileUri('/fennmoor/fennmoor.dewsite.yaml');
const KIT = fileUri('/fennmoor/models.dewkit.yaml');
/** The kit of the fixtures of the rules. */
export const FIXTURE_MODELS = readFileSync(
  fileURLToPath(new URL('../rules/kits/models.dewkit.yaml', import.meta.url)),
  'utf8',
);

export const TODAY = '2026-10-01';

export interface AssessedText {
  /** One space in flow style. */
  readonly space: string;
  /** What the point says besides its space, in flow style without the braces. */
  readonly point: string;
  readonly header?: string;
  readonly kit?: string;
}

export function assessedPoint({
  space,
  point,
  header = 'surroundings: 5 .. 32 degC',
  kit = FIXTURE_MODELS,
}: AssessedText) {
  const workspace = new Workspace({ today: () => TODAY });
  workspace.set(KIT, kit);
  workspace.set(
    SITE,
    `dewright: 1
site: {id: fennmoor, ${header}, kits: [models.dewkit.yaml]}
spaces:
  room: ${space}
points:
  P-1: {space: room, ${point}}
`,
  );
  const content = workspace.analysis(SITE)?.content;
  const evaluated = content?.kind === 'site' ? content.site.points.get('P-1') : undefined;
  if (evaluated === undefined) throw new Error('the site text gives no point');
  return evaluated;
}

export function worstBudget(point: PointEvaluation, quantity: QuantityName): Budget {
  const budgets = point.budgets.get(quantity);
  if (budgets?.worst === undefined) throw new Error(budgets?.missing ?? 'not reported');
  return budgets.worst;
}

/** The value of a fact, which has to have one. */
export function factValue(point: PointEvaluation, id: string): number {
  const fact = factsById(point).get(id);
  if (fact?.value === undefined) throw new Error(`${id}: ${fact?.missing ?? 'no such fact'}`);
  return fact.value;
}
