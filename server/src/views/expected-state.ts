/** What is to be seen at a point when all is right, with the state of the air at which each number is the worst. */
import type { MarkupElement } from '../base/markup.ts';
import { upperFirst } from '../base/words.ts';
import { type Fact, isKnown, showCorner, showFact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { paragraph, table, textCell, wholeCell } from './elements.ts';

/** In the order in which a person looks: the readings, the sensor, the fitting, the supply, the checks. */
const OF_THE_SENSOR: readonly string[] = [
  'humidity-at-sensor',
  'lowest-humidity-at-sensor',
  'margin-to-dew-point',
  'highest-head-temperature',
  'rise-reachable',
  'fitting-inner-surface',
  'fitting-margin',
  'voltage-at-probe',
];

export function expectedState({ facts, reports }: PointEvaluation): MarkupElement {
  const ids = [
    ...reports.flatMap(({ quantity }) => [
      `${quantity}/lowest`,
      `${quantity}/highest`,
      `${quantity}/expanded-uncertainty`,
    ]),
    ...OF_THE_SENSOR,
    ...[...facts.keys()].filter((id) => id.startsWith('salt/') && id.endsWith('/expected-reading')),
    'check/time-left',
  ];
  const rows = ids.flatMap((id) => rowOf(facts.get(id)));
  if (rows.length === 0) return paragraph('Nothing can be computed of this point.');
  return table({
    title: 'Expected state',
    columns: [{ title: 'What' }, { title: 'Value', isNumber: true }, { title: 'At' }],
    rows,
  });
}

function rowOf(fact: Fact | undefined) {
  if (!isKnown(fact)) return [];
  const at = fact.at === undefined ? '' : showCorner(fact.at);
  return [[textCell(upperFirst(fact.title)), wholeCell(showFact(fact)), textCell(at)]];
}
