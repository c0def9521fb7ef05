/** Evaluates one point of a site text with the invented models that the fixtures of the rules use. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';

const SITE = fileUri('/fennmoor/fennmoor.dewsite.yaml');
const KIT = fileUri('/fennmoor/models.dewkit.yaml');
const MODELS = readFileSync(fileURLToPath(new URL('../rules/kits/models.dewkit.yaml', import.meta.url)), 'utf8');

export interface SiteText {
  /** One space in flow style. */
  readonly space: string;
  /** One point in flow style, without its space. */
  readonly point: string;
  readonly header?: string;
  readonly kit?: string;
}

export function pointWithKit({ space, point, header = 'surroundings: 5 .. 32 degC', kit = MODELS }: SiteText) {
  const workspace = new Workspace();
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
  const evaluated: PointEvaluation | undefined = content?.kind === 'site' ? content.site.points.get('P-1') : undefined;
  if (evaluated === undefined) throw new Error('the site text gives no point');
  return evaluated;
}

/** The value of a fact, which has to have one. */
export function knownValue(point: PointEvaluation, id: string): number {
  const fact = point.facts.get(id);
  if (fact?.value === undefined) throw new Error(`${id}: ${fact?.missing ?? 'no such fact'}`);
  return fact.value;
}
