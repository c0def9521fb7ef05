/** What a recording says, in sentences that the command line, hovers and findings share. */
import { counted } from '../../base/words.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import { dimensionOfBounded, titleOfBounded } from './bounds.ts';
import type {
  BoundedQuantity,
  Excess,
  Moment,
  Ramp,
  RecordingFaults,
  RecordingSummary,
  SensorHumidity,
} from './summary.ts';

/** `49 rows from … to …, one every 15 min: 12 h, all of it with a value.` */
export function extentWords({ extent }: RecordingSummary): string {
  const { rows, from, to, step, seconds, usedSeconds } = extent;
  const unused = seconds - usedSeconds;
  const used = unused > 0 ? `${showTime(unused)} of it without a value` : 'all of it with a value';
  return `${rows} rows from ${from} to ${to}, usually one every ${showTime(step)}: ${showTime(seconds)}, ${used}.`;
}

export function outsideWords({ outside }: RecordingSummary): string {
  if (outside.seconds === 0) return 'Inside the envelope all the time.';
  return `Outside the envelope for ${showTime(outside.seconds)}, ${showShare(outside.share)} of the time.`;
}

/** One line for each bound that was passed, the longest first. */
export function excessWords({ outside }: RecordingSummary): readonly string[] {
  const all = outside.envelopes.flatMap(({ phase, excesses }) => excesses.map((excess) => ({ phase, excess })));
  all.sort((one, other) => other.excess.seconds - one.excess.seconds);
  return all.map(({ phase, excess }) => `${phase === undefined ? '' : `${phase}: `}${wordsOfExcess(excess)}`);
}

/** `relative humidity above 80 %RH for 2 h, up to 84.2 %RH at 2026-09-08T10:15:00Z (61 °C and 84.2 %RH)` */
function wordsOfExcess({ quantity, side, limit, seconds, farthest, at }: Excess): string {
  const show = (value: number): string => showQuantity(value, dimensionOfBounded(quantity));
  const reach = `${side === 'above' ? 'up' : 'down'} to ${show(farthest)}`;
  return `${titleOfBounded(quantity)} ${side} ${show(limit)} for ${showTime(seconds)}, ${reach} ${momentWords(at)}`;
}

export function sensorWords({
  rise,
  limit,
  highest,
  highestAt,
  secondsAboveLimit,
  leastMargin,
  quantiles,
}: SensorHumidity): string {
  const name = rise === 0 ? 'unheated sensor' : `sensor heated by ${showQuantity(rise, 'temperature-difference')}`;
  const median = quantiles.find(({ share }) => share === 0.5);
  const high = quantiles.find(({ share }) => share === 0.95);
  const humidity = (value: number): string => showQuantity(value, 'relative-humidity');
  const usual =
    median === undefined || high === undefined
      ? ''
      : `half of the time below ${humidity(median.value)}, 95 % of it below ${humidity(high.value)}, `;
  const limitWords =
    secondsAboveLimit === 0
      ? `never above its limit of ${humidity(limit)}`
      : `above its limit of ${humidity(limit)} for ${showTime(secondsAboveLimit)}`;
  const margin =
    leastMargin === undefined
      ? ''
      : `; least margin to condensation ${showQuantity(leastMargin.kelvin, 'temperature-difference')} or ${humidity(1 - highest)}`;
  return `${name}: ${usual}at most ${humidity(highest)} ${momentWords(highestAt)}; ${limitWords}${margin}`;
}

/** The envelope that the log supports: the span of 99 % of the time, and the extremes. */
export function rangeWords({ ranges }: RecordingSummary): readonly string[] {
  return (Object.keys(ranges) as BoundedQuantity[]).flatMap((quantity) => {
    const range = ranges[quantity];
    if (range === undefined) return [];
    const dimension = dimensionOfBounded(quantity);
    const most = showRange(range.low, range.high, dimension);
    const all = showRange(range.lowest, range.highest, dimension);
    const words = most === all ? `${all} all the time` : `${most} for 99 % of the time, ${all} in all`;
    return `${titleOfBounded(quantity)} ${words}`;
  });
}

export function rampWords({ ramps }: RecordingSummary): readonly string[] {
  const words = (name: string, ramp: Ramp | undefined): string[] =>
    ramp === undefined
      ? []
      : [
          `${name} for ten minutes or more: ${showQuantity(Math.abs(ramp.perSecond), 'temperature-rate')} from ${ramp.from} to ${ramp.to}`,
        ];
  return [...words('fastest rise', ramps.rising), ...words('fastest fall', ramps.falling)];
}

/** What was wrong with the rows, and what was made of it; nothing where nothing was. */
export function faultWords(faults: RecordingFaults): readonly string[] {
  const { gaps, gapSeconds, longestGap } = faults;
  const longest =
    longestGap === undefined ? '' : `, the longest ${showTime(longestGap.seconds)} from ${longestGap.from}`;
  const lines: readonly (readonly [count: number, what: string])[] = [
    [faults.brokenRows, 'that cannot be taken apart, left out'],
    [faults.timeless, 'without a readable time, left out'],
    [faults.valueless, 'without a readable air temperature or humidity, taken as time without a value'],
    [faults.speedless, 'without a readable speed, used without it'],
    [faults.impossible, 'of air that cannot be, taken as time without a value'],
    [faults.takenAsSaturated, 'above saturation by less than a sensor errs, taken as saturated air'],
    [faults.duplicates, 'at the time of the row before, of which the last counts'],
    [faults.backwards, 'earlier than the row before, which then stands for no time'],
    [
      faults.clockForward + faults.clockBack,
      'at which the local clock jumps by an hour, taken as the change of summer time',
    ],
  ];
  const words = lines.flatMap(([count, what]) => (count === 0 ? [] : [`${counted(count, 'row')} ${what}`]));
  if (gaps > 0) words.push(`${counted(gaps, 'gap')} of ${showTime(gapSeconds)} in all${longest}: nobody’s time`);
  return words;
}

function showShare(share: number): string {
  return showQuantity(share, 'percentage');
}

function showTime(seconds: number): string {
  return showQuantity(seconds, 'time');
}

function momentWords({ time, airCelsius, relativeHumidity }: Moment): string {
  const air = showQuantity(airCelsius, 'temperature');
  return `at ${time} (${air} and ${showQuantity(relativeHumidity, 'relative-humidity')})`;
}
