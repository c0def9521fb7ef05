import { isKnown, type KnownFact, showFact } from '../evaluate/fact.ts';
import type { ModelRef } from '../evaluate/models.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { pressureExtreme } from '../evaluate/pressure-extreme.ts';
import { quantityExtreme, type SpaceEvaluation } from '../evaluate/space.ts';
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
    'Heads that only their own heater takes over the range: head-too-hot speaks of those. A heated head counts with the humidity that its sensor sees.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [
    'air-temperature/highest',
    'air-temperature/lowest',
    'humidity-at-sensor',
    'relative-humidity/lowest',
    'pressure/highest',
    'pressure/lowest',
  ],
  fixes: [],
  check: {
    point: (view) => {
      const { space, point, humidityProbeModel, airTemperatureProbeModel } = view;
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
      return [
        ...leaves(space, humidityProbe, 'air', humidityRanges?.temperature, temperatures(space)),
        ...leaves(space, humidityProbe, 'relative humidity', humidityRanges?.relativeHumidity, humidities(view, space)),
        ...leaves(space, humidityProbe, 'pressure', humidityRanges?.pressure, pressures(space)),
        ...leaves(space, airProbe, 'air', temperatureRanges?.temperature, temperatures(space)),
        ...leaves(space, airProbe, 'pressure', temperatureRanges?.pressure, pressures(space)),
      ];
    },
  },
};

interface Installed {
  readonly words: string;
  readonly named: Located<string> | undefined;
  readonly ref: ModelRef<unknown> | undefined;
}

type Ends = readonly [lowest: KnownFact | undefined, highest: KnownFact | undefined];

function leaves(
  space: SpaceEvaluation,
  { words, named, ref }: Installed,
  what: string,
  range: Located<QuantityRange> | undefined,
  [lowest, highest]: Ends,
): readonly FindingDraft[] {
  if (range === undefined || named === undefined || ref === undefined) return [];
  const { low, high, dimension } = range.value;
  const finding = (fact: KnownFact, by: number, verb: string, side: string): FindingDraft => {
    const beyond = showQuantity(by, dimension === 'temperature' ? 'temperature-difference' : dimension);
    const shown = showRange(low, high, dimension);
    return {
      message: `The ${what} ${verb} ${showFact(fact)}${inCorner(fact)}, ${beyond} ${side} the range of the ${words}, ${shown}. Choose a model that bears it.`,
      origin: named.origin,
      facts: [fact],
      related: [
        { message: `The range of ${ref.id} is ${shown}.`, origin: range.origin, file: ref.file },
        ...worstPhase(space, fact),
      ],
    };
  };
  return [
    ...(highest !== undefined && highest.value > high
      ? [finding(highest, highest.value - high, 'reaches', 'above')]
      : []),
    ...(lowest !== undefined && lowest.value < low
      ? [finding(lowest, low - lowest.value, 'goes down to', 'below')]
      : []),
  ];
}

function temperatures(space: SpaceEvaluation): Ends {
  return [
    knownOrNone(quantityExtreme(space, 'air-temperature', 'lowest')),
    knownOrNone(quantityExtreme(space, 'air-temperature', 'highest')),
  ];
}

/** The lowest is that of the air: what a heated sensor sees is lower still. */
function humidities({ facts }: PointEvaluation, space: SpaceEvaluation): Ends {
  return [
    knownOrNone(quantityExtreme(space, 'relative-humidity', 'lowest')),
    knownOrNone(facts.get('humidity-at-sensor')),
  ];
}

function pressures(space: SpaceEvaluation): Ends {
  return [pressureExtreme(space, 'lowest'), pressureExtreme(space, 'highest')];
}

function knownOrNone(fact: Parameters<typeof isKnown>[0]): KnownFact | undefined {
  return isKnown(fact) ? fact : undefined;
}
