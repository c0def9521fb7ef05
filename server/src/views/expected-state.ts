/** What is to be seen at a point when all is right, with the state of the air at which each number is the worst. */

import type { MarkupElement } from '../base/markup.ts';
import { upperFirst } from '../base/words.ts';
import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { timeToCheck } from '../evaluate/checks/due.ts';
import { expectedReading } from '../evaluate/checks/salt-facts.ts';
import {
  highestHeadTemperature,
  humidityAtSensor,
  lowestHumidityAtSensor,
  marginToDewPoint,
} from '../evaluate/dryness/dryness.ts';
import { riseReachable } from '../evaluate/dryness/reachable-rise.ts';
import { type Fact, isKnown, showCorner, showFact } from '../evaluate/facts/fact.ts';
import { fittingSurface } from '../evaluate/mounting/fitting-facts.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { PointFact } from '../evaluate/resolved/point-fact.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import { voltageAtProbe } from '../evaluate/supply/facts.ts';
import { paragraph, table, textCell, wholeCell } from './elements.ts';

/** In the order in which a person looks: the readings, the sensor, the fitting, the supply, the checks. */
const OF_THE_SENSOR: readonly PointFact[] = [
  marginToDewPoint,
  highestHeadTemperature,
  riseReachable,
  fittingSurface.innerSurface,
  fittingSurface.margin,
  voltageAtProbe,
];

export function expectedState({ facts, reports, checkPlan }: PointEvaluation): MarkupElement {
  const keys = [
    ...reports.flatMap(({ quantity }) => [
      lowestReported(quantity),
      highestReported(quantity),
      expandedUncertainty(quantity),
    ]),
    humidityAtSensor,
    ...(checkPlan.salts === undefined ? [] : [lowestHumidityAtSensor]),
    ...OF_THE_SENSOR,
    ...(checkPlan.salts?.salts ?? []).map(({ id }) => expectedReading(id)),
    timeToCheck,
  ];
  const rows = keys.flatMap((key) => rowOf(facts.get(key)));
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
