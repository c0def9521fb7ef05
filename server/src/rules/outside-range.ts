import { highestPressure, lowestPressure } from '../evaluate/air/pressure-facts.ts';
import { highest, lowest } from '../evaluate/air/quantity-range.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { humidityAtSensor } from '../evaluate/dryness/dryness.ts';
import {
  airTemperatureEnds,
  humidityEnds,
  leavesRange,
  pressureEnds,
  type RangeEnds,
} from '../evaluate/equipment/model-limits.ts';
import type { ModelRef } from '../evaluate/equipment/models.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { inSampleLine } from '../evaluate/resolved/mounted-stem.ts';
import type { Located } from '../model/located.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import type { QuantityRange } from '../quantity/quantity.ts';
import type { FindingDraft, Rule } from './rule.ts';
import { worstPhase } from './support/related.ts';
import { inCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'outside-range',
  group: 'Model limits',
  severity: 'error',
  title: 'The air of the space leaves the temperature, pressure or humidity range of a model.',
  why: 'Outside its range a probe reads wrong without saying so, and may be damaged for good.',
  mend: 'Choose a model whose ranges hold the whole envelope, or correct the envelope.',
  leavesAlone:
    'Heads that only their own heater takes over the range: head-too-hot speaks of those. Temperature and humidity of a probe in a sample line: they are those of the line. A heated head counts with the highest humidity that its sensor sees.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [
    highest('air-temperature'),
    lowest('air-temperature'),
    humidityAtSensor,
    lowest('relative-humidity'),
    highestPressure,
    lowestPressure,
  ],
  fixes: [],
  check: {
    point: ({ space, point, facts, humidityProbeModel, airTemperatureProbeModel }) => {
      if (space?.complete !== true) return [];
      const humidityRanges = humidityProbeModel?.model?.value.ranges?.value;
      const temperatureRanges = airTemperatureProbeModel?.model?.value.ranges?.value;
      const humidityProbe = {
        words: 'humidity probe',
        named: point.humidityProbe?.value.model,
        ref: humidityProbeModel,
      };
      const airProbe = {
        words: 'air-temperature probe',
        named: point.airTemperatureProbe?.value.model,
        ref: airTemperatureProbeModel,
      };
      const isAway = inSampleLine(point.humidityProbe?.value.mounting?.value);
      const temperatures = isAway ? NOT_KNOWN : airTemperatureEnds(space);
      const humidities = isAway ? NOT_KNOWN : humidityEnds(space, facts.get(humidityAtSensor));
      return [
        ...leaves(space, humidityProbe, 'air', humidityRanges?.temperature, temperatures),
        ...leaves(space, humidityProbe, 'relative humidity', humidityRanges?.relativeHumidity, humidities),
        ...leaves(space, humidityProbe, 'pressure', humidityRanges?.pressure, pressureEnds(space)),
        ...leaves(space, airProbe, 'air', temperatureRanges?.temperature, airTemperatureEnds(space)),
        ...leaves(space, airProbe, 'pressure', temperatureRanges?.pressure, pressureEnds(space)),
      ];
    },
  },
};

const NOT_KNOWN: RangeEnds = [undefined, undefined];

interface Installed {
  readonly words: string;
  readonly named: Located<string> | undefined;
  readonly ref: ModelRef<unknown> | undefined;
}

function leaves(
  space: SpaceEvaluation,
  { words, named, ref }: Installed,
  what: string,
  range: Located<QuantityRange> | undefined,
  ends: RangeEnds,
): readonly FindingDraft[] {
  if (range === undefined || named === undefined || ref === undefined) return [];
  const { low, high, dimension } = range.value;
  const shown = showRange(low, high, dimension);
  return leavesRange(ends, range).map(({ fact, bound, side: kept }) => {
    const by = Math.abs(fact.value - bound.value);
    const beyond = showQuantity(by, dimension === 'temperature' ? 'temperature-difference' : dimension);
    const [verb, side] = kept === 'at most' ? ['reaches', 'above'] : ['goes down to', 'below'];
    return {
      message: () =>
        `The ${what} ${verb} ${showFact(fact)}${inCorner(fact)}, ${beyond} ${side} the range of the ${words}, ${shown}. Choose a model that bears it.`,
      origin: named.origin,
      facts: [fact],
      related: () => [
        { message: `The range of ${ref.id} is ${shown}.`, origin: range.origin, file: ref.file },
        ...worstPhase(space, fact),
      ],
    };
  });
}
