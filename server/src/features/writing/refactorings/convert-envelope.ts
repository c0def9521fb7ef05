/** Writes the relative humidity of an envelope as a dew point, or the other way round, and says what that takes in. */
import type { Analysis } from '../../../analysis/analysis.ts';
import type { PhaseEnvelope } from '../../../evaluate/air/envelope.ts';
import { evaluatePhase } from '../../../evaluate/air/phase.ts';
import { inOnePhase, type SpaceEvaluation } from '../../../evaluate/air/space.ts';
import { DIMENSIONS } from '../../../quantity/dimension.ts';
import { showRange, writeRange } from '../../../quantity/format-quantity.ts';
import type { Location } from '../../../syntax/locate.ts';
import { extremesOf, shownRange, spaceInPhase } from '../../support/envelope-ranges.ts';
import type { Refactoring } from './refactoring.ts';

type Measure = 'humidity' | 'dew-point';

const QUANTITY = { humidity: 'relative-humidity', 'dew-point': 'dew-point' } as const;
const DIMENSION = { humidity: 'relative-humidity', 'dew-point': 'temperature' } as const;
/** One %RH and one K, canonical. */
const UNIT_STEP = { humidity: 0.01, 'dew-point': 1 } as const;

/** On the key or value of `humidity` or `dew-point` of an envelope. */
export function envelopeConversion(analysis: Analysis, location: Location): readonly Refactoring[] {
  const { content, parsed, file } = analysis;
  const [map, id = '', ...inner] = location.path;
  const from = inner.at(-1);
  if (content.kind !== 'site' || map !== 'spaces' || (from !== 'humidity' && from !== 'dew-point')) return [];
  const to: Measure = from === 'humidity' ? 'dew-point' : 'humidity';
  const phase = inner[0] === 'phases' ? inner[1] : undefined;
  const space = content.site.spaces.get(id);
  const alone = space && spaceInPhase(space, phase);
  const written = alone?.phases[0]?.envelope;
  const extremes = alone && extremesOf(alone, QUANTITY[to]);
  if (alone === undefined || written === undefined || extremes === undefined || written.humidityKey !== from) return [];
  const { humidity } = written;
  if (humidity.origin.definedAt !== undefined || humidity.keyOrigin?.definedAt !== undefined) return [];
  const range = roundedOutward(extremes.lowest.value, extremes.highest.value, to, written);
  const after = extremesOf(withHumidity(alone, written, to, range), QUANTITY[from]);
  if (humidity.keyOrigin === undefined || after === undefined) return [];
  const text = writeRange(range.low, range.high, DIMENSION[to]);
  const shown = showRange(range.low, range.high, DIMENSION[to]);
  const consequence = from === 'humidity' ? `${shownRange(after)}` : `dew points of ${shownRange(after)}`;
  return [
    {
      title: `Write as ${to === 'humidity' ? 'humidity' : 'dew point'}, ${shown}; the envelope then takes in ${consequence}`,
      kind: 'rewrite',
      edits: [
        { file, range: parsed.rangeOf(humidity.keyOrigin), newText: to },
        { file, range: parsed.rangeOf(humidity.origin), newText: text },
      ],
    },
  ];
}

interface Ends {
  readonly low: number;
  readonly high: number;
}

/**
 * To whole units, or to tenths where the range is narrow, so that no state is lost; but not beyond saturation: no
 * higher than 100 %RH, and no dew point above the hottest air.
 */
function roundedOutward(low: number, high: number, measure: Measure, { temperature }: PhaseEnvelope): Ends {
  const unit = UNIT_STEP[measure];
  const step = high - low < 5 * unit ? unit / 10 : unit;
  const highest = measure === 'humidity' ? 1 : temperature.value.high;
  /** A number that lies a rounding error beyond a step is that step. */
  const dust = 1e-9;
  return {
    low: Math.floor(low / step + dust) * step,
    high: Math.min(highest, Math.ceil(high / step - dust) * step),
  };
}

function withHumidity(
  space: SpaceEvaluation,
  written: PhaseEnvelope,
  key: Measure,
  { low, high }: Ends,
): SpaceEvaluation {
  const dimension = DIMENSION[key];
  const [unit] = DIMENSIONS[dimension].units;
  const humidity = {
    ...written.humidity,
    value: { ...written.humidity.value, dimension, low, high, ...(unit && { unit }) },
  };
  const phase = evaluatePhase({ ...written, humidityKey: key, humidity });
  return inOnePhase(space, phase);
}
