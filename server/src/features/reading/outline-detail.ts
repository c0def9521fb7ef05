/** What stands beside a name in the outline: a computed range where there is one, else the words of the file. */

import type { Analysis } from '../../analysis/analysis.ts';
import { remembered } from '../../base/remembered.ts';
import type { TextRange } from '../../base/text-range.ts';
import { humidityAtSensor } from '../../evaluate/dryness/dryness.ts';
import { isKnown, showFact } from '../../evaluate/facts/fact.ts';
import { enWords } from '../../evaluate/history/words.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { highestReported, lowestReported } from '../../evaluate/resolved/report-range.ts';
import type { SyntaxNode } from '../../syntax/nodes.ts';
import { extremesOf, shownRange, spaceInPhase } from '../support/envelope-ranges.ts';
import { scalarIn } from '../support/scalar-in.ts';
import { readingAt, stepNamed } from '../support/visit-places.ts';

/** Keys that tell in the file's own words what something is, the first that is there. */
const TELLING = ['title', 'model', 'quantity', 'mode', 'kind', 'method'];

export function outlineDetail(analysis: Analysis, path: readonly string[], value: SyntaxNode): string {
  return computedDetail(analysis, path) ?? writtenDetail(value);
}

function computedDetail(analysis: Analysis, path: readonly string[]): string | undefined {
  const { content } = analysis;
  if (content.kind === 'visit')
    return path.length === 2 && path[0] === 'steps' ? stepDetail(analysis, path[1] ?? '') : undefined;
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
  const humidity = facts.get(humidityAtSensor);
  const told = [point.space?.value, isKnown(humidity) ? `${showFact(humidity)} at the sensor` : undefined];
  const known = told.filter((text) => text !== undefined);
  return known.length === 0 ? undefined : known.join(', ');
});

const reportDetails = remembered(
  ({ reports, facts }: PointEvaluation): ReadonlyMap<string, string> =>
    new Map(
      reports.flatMap(({ quantity }) => {
        const [lowest, highest] = [facts.get(lowestReported(quantity)), facts.get(highestReported(quantity))];
        return isKnown(lowest) && isKnown(highest) ? [[quantity, shownRange({ lowest, highest })]] : [];
      }),
    ),
);

/** `K2-MT-101, open` */
function stepDetail(analysis: Analysis, key: string): string | undefined {
  const at = stepNamed(analysis, key);
  return at && `${at.step.subject}, ${at.last?.done === true ? 'done' : 'open'}`;
}

/** Of a reading in a list, beside the tag of its point: `relative-humidity, En -2.7`. */
export function readingDetail(analysis: Analysis, range: TextRange): string | undefined {
  const error = readingAt(analysis, range)?.error;
  if (error === undefined) return undefined;
  const { quantity } = error.reading;
  return error.enNumber === undefined ? quantity : `${quantity}, ${enWords(error.enNumber)}`;
}

function writtenDetail(value: SyntaxNode): string {
  if (value.kind === 'alias') return `*${value.name}`;
  if (value.kind === 'scalar') return value.text;
  return TELLING.map((key) => scalarIn(value, key)?.text ?? '').find((text) => text !== '') ?? '';
}
