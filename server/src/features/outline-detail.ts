/** What stands beside a name in the outline: a computed range where there is one, else the words of the file. */
import type { Analysis } from '../analysis/analysis.ts';
import { remembered } from '../base/remembered.ts';
import { isKnown, showFact } from '../evaluate/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { SyntaxNode } from '../syntax/nodes.ts';
import { extremesOf, shownRange, spaceInPhase } from './envelope-ranges.ts';

/** Keys that tell in the file's own words what something is, the first that is there. */
const TELLING = ['title', 'model', 'quantity', 'mode', 'kind', 'method'];

export function outlineDetail(analysis: Analysis, path: readonly string[], value: SyntaxNode): string {
  return computedDetail(analysis, path) ?? writtenDetail(value);
}

function computedDetail({ content }: Analysis, path: readonly string[]): string | undefined {
  if (content.kind !== 'site') return undefined;
  const [map, entry = '', section, name] = path;
  if (map === 'spaces') {
    const space = content.site.spaces.get(entry);
    const seen = section === undefined ? space : section === 'phases' && space && spaceInPhase(space, name);
    const isWhole = section === undefined || name !== undefined;
    const extremes = seen && isWhole ? extremesOf(seen, 'dew-point') : undefined;
    return extremes && `dew point ${shownRange(extremes)}`;
  }
  const point = map === 'points' ? content.site.points.get(entry) : undefined;
  if (point === undefined) return undefined;
  if (section === undefined) return pointDetail(point);
  return section === 'reports' && name !== undefined ? reportDetails(point).get(name) : undefined;
}

const pointDetail = remembered(({ point, facts }: PointEvaluation): string | undefined => {
  const humidity = facts.get('humidity-at-sensor');
  const told = [point.space?.value, isKnown(humidity) ? `${showFact(humidity)} at the sensor` : undefined];
  const known = told.filter((text) => text !== undefined);
  return known.length === 0 ? undefined : known.join(', ');
});

const reportDetails = remembered(
  ({ reports, facts }: PointEvaluation): ReadonlyMap<string, string> =>
    new Map(
      reports.flatMap(({ quantity }) => {
        const [lowest, highest] = [facts.get(`${quantity}/lowest`), facts.get(`${quantity}/highest`)];
        return isKnown(lowest) && isKnown(highest) ? [[quantity, shownRange({ lowest, highest })]] : [];
      }),
    ),
);

function writtenDetail(value: SyntaxNode): string {
  if (value.kind === 'alias') return `*${value.name}`;
  if (value.kind === 'scalar') return value.text;
  if (value.kind !== 'map') return '';
  for (const key of TELLING) {
    const told = value.pairs.find((pair) => pair.key.text === key)?.value;
    if (told?.kind === 'scalar' && told.text !== '') return told.text;
  }
  return '';
}
