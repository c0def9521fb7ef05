/** What `replay` prints of a recording: text for a person, JSON for programs. */
import type { DetectedColumns } from '../../evaluate/recorded/answer.ts';
import { dimensionOfBounded } from '../../evaluate/recorded/bounds.ts';
import type {
  BoundedQuantity,
  EnvelopeOutside,
  Moment,
  RecordingSummary,
  SensorHumidity,
} from '../../evaluate/recorded/summary.ts';
import {
  excessWords,
  extentWords,
  faultWords,
  outsideWords,
  rampWords,
  rangeWords,
  sensorWords,
} from '../../evaluate/recorded/words.ts';
import type { Dimension } from '../../quantity/dimension.ts';
import { showNumber } from '../../quantity/format-quantity.ts';
import { rounded } from './json.ts';

export interface Replay {
  readonly log: string;
  readonly site: string;
  readonly summary: RecordingSummary;
  /** Where nobody said which column is which. */
  readonly detected: DetectedColumns | undefined;
}

export function replayText({ log, site, summary, detected }: Replay): string {
  const columns = summary.extent.columns.map(({ quantity, column, unit }) => `${quantity} from “${column}” in ${unit}`);
  const indented = (lines: readonly string[]): string[] => lines.map((line) => `  ${line}`);
  const faults = faultWords(summary.faults);
  return [
    `${log}, laid against ${summary.basis.space} of ${site}`,
    ...indented([extentWords(summary), `${detected === undefined ? 'Read' : 'Detected'}: ${columns.join(', ')}.`]),
    '',
    outsideWords(summary),
    ...indented(excessWords(summary)),
    '',
    'Humidity at the sensors of the space:',
    ...indented(summary.sensors.map(sensorWords)),
    '',
    'The envelope that the log supports:',
    ...indented([...rangeWords(summary), ...rampWords(summary)]),
    '',
    faults.length === 0 ? 'No row or time was wrong.' : 'What was wrong with rows and times:',
    ...indented(faults),
  ].join('\n');
}

export function replayJson({ log, site, summary }: Replay): string {
  const { basis, extent, faults, outside, sensors, ramps, ranges, density } = summary;
  const { seconds, usedSeconds, step, ...told } = extent;
  const ramp = ramps.rising;
  const fall = ramps.falling;
  const rate = (perSecond: number) => valueJson(perSecond, 'temperature-rate');
  return JSON.stringify(
    {
      version: 1,
      log,
      site,
      space: basis.space,
      extent: { ...told, step: inSeconds(step), time: inSeconds(seconds), 'time-with-value': inSeconds(usedSeconds) },
      outside: {
        time: inSeconds(outside.seconds),
        share: rounded(outside.share),
        envelopes: outside.envelopes.map(envelopeJson),
      },
      sensors: sensors.map(sensorJson),
      ramps: {
        ...(ramp === undefined ? {} : { rising: { ...ramp, perSecond: undefined, rate: rate(ramp.perSecond) } }),
        ...(fall === undefined ? {} : { falling: { ...fall, perSecond: undefined, rate: rate(fall.perSecond) } }),
      },
      supported: Object.fromEntries(
        Object.entries(ranges).map(([quantity, range]) => [
          quantity,
          Object.fromEntries(
            Object.entries(range).map(([key, value]) => [
              key,
              valueJson(value, dimensionOfBounded(quantity as BoundedQuantity)),
            ]),
          ),
        ]),
      ),
      density: { step: valueJson(density.step, 'temperature-difference'), cells: density.cells },
      faults,
    },
    undefined,
    1,
  );
}

function envelopeJson({ phase, insideSeconds, excesses }: EnvelopeOutside) {
  return {
    ...(phase === undefined ? {} : { phase }),
    inside: inSeconds(insideSeconds),
    passed: excesses.map(({ quantity, side, limit, seconds, farthest, at, covering }) => {
      const value = (number: number) => valueJson(number, dimensionOfBounded(quantity));
      return {
        quantity,
        side,
        limit: value(limit),
        time: inSeconds(seconds),
        farthest: value(farthest),
        covering: value(covering),
        at: momentJson(at),
      };
    }),
  };
}

function sensorJson({ rise, limit, secondsAboveLimit, highest, highestAt, leastMargin, quantiles }: SensorHumidity) {
  const humidity = (value: number) => valueJson(value, 'relative-humidity');
  return {
    rise: valueJson(rise, 'temperature-difference'),
    limit: humidity(limit),
    'time-above-limit': inSeconds(secondsAboveLimit),
    highest: { ...humidity(highest), at: momentJson(highestAt) },
    ...(leastMargin === undefined
      ? {}
      : {
          'least-margin': {
            ...valueJson(leastMargin.kelvin, 'temperature-difference'),
            at: momentJson(leastMargin.at),
          },
        }),
    quantiles: quantiles.map(({ share, value }) => ({ share, ...humidity(value) })),
  };
}

function momentJson({ time, airCelsius, dewPointCelsius, relativeHumidity }: Moment) {
  return {
    time,
    'air-temperature': rounded(airCelsius),
    ...(dewPointCelsius === undefined ? {} : { 'dew-point': rounded(dewPointCelsius) }),
    'relative-humidity': rounded(relativeHumidity * 100),
  };
}

/** Times in JSON are seconds, whatever their size. */
function inSeconds(seconds: number) {
  return { value: rounded(seconds), unit: 's' };
}

function valueJson(value: number, dimension: Dimension) {
  const shown = showNumber(value, dimension);
  return { value: rounded(shown.value), unit: shown.unit };
}
