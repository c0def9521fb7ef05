/** Every kind of view, by the name that the editor asks for it with. */
import { chartView } from './chart.ts';
import { pointView } from './point.ts';
import type { ViewKind } from './view.ts';
import { whatIfView } from './what-if.ts';

export const VIEW_KINDS: ReadonlyMap<string, ViewKind> = new Map([
  ['chart', chartView],
  ['point', pointView],
  ['what-if', whatIfView],
]);
