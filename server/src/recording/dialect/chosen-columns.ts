/** The columns that are read, from what a visit file or a call names. */
import { nearestWord } from '../../base/nearest.ts';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { NamedColumns } from '../../evaluate/recorded/answer.ts';
import type { UsedColumn } from '../../evaluate/recorded/summary.ts';
import { columnName } from './column-names.ts';
import { type LogSample, timeFormatsOf } from './detect-columns.ts';
import {
  type ColumnUnit,
  columnUnit,
  LOG_HUMIDITIES,
  type LogHumidity,
  type LogQuantity,
  logQuantity,
} from './log-quantities.ts';
import type { TimeFormat } from './time-format.ts';

export interface ChosenColumn {
  readonly index: number;
  readonly header: string;
  readonly unit: ColumnUnit;
}

export interface ChosenColumns {
  readonly time: { readonly index: number; readonly header: string; readonly format: TimeFormat };
  readonly airTemperature: ChosenColumn;
  readonly humidity: ChosenColumn & { readonly quantity: LogHumidity };
  readonly pressure: ChosenColumn | undefined;
  readonly speed: ChosenColumn | undefined;
}

export function chooseColumns(named: NamedColumns, sample: LogSample): Outcome<ChosenColumns, string> {
  const { time: timeName, 'air-temperature': airName } = named;
  const humidity = LOG_HUMIDITIES.find((quantity) => named[quantity] !== undefined);
  if (timeName === undefined) return fail('Which column holds the time is not said.');
  if (airName === undefined) return fail('Which column holds the air temperature is not said.');
  if (humidity === undefined)
    return fail('Which column holds a humidity is not said, such as relative-humidity or dew-point.');
  const time = sample.headers.indexOf(timeName);
  if (time < 0) return fail(noSuchColumn(timeName, sample));
  const [format, other] = timeFormatsOf(sample, time);
  if (format === undefined)
    return fail(`The column “${timeName}” holds no times that can be read: write them by ISO 8601.`);
  if (other !== undefined)
    return fail(`The days and months of “${timeName}” cannot be told apart; write them by ISO 8601.`);
  const air = columnOf('air-temperature', airName, sample);
  if (!air.ok) return air;
  const wet = columnOf(humidity, named[humidity] ?? '', sample);
  if (!wet.ok) return wet;
  const pressure = optional('pressure', named, sample);
  if (!pressure.ok) return pressure;
  const speed = optional('speed', named, sample);
  if (!speed.ok) return speed;
  return succeed({
    time: { index: time, header: timeName, format },
    airTemperature: air.value,
    humidity: { ...wet.value, quantity: humidity },
    pressure: pressure.value,
    speed: speed.value,
  });
}

export function usedColumns({ time, airTemperature, humidity, pressure, speed }: ChosenColumns): readonly UsedColumn[] {
  const used = (quantity: string, column: ChosenColumn | undefined): UsedColumn[] =>
    column === undefined ? [] : [{ quantity, column: column.header, unit: column.unit.symbol }];
  return [
    { quantity: 'time', column: time.header, unit: time.format.title },
    ...used('air-temperature', airTemperature),
    ...used(humidity.quantity, humidity),
    ...used('pressure', pressure),
    ...used('speed', speed),
  ];
}

function optional(
  quantity: LogQuantity,
  named: NamedColumns,
  sample: LogSample,
): Outcome<ChosenColumn | undefined, string> {
  const name = named[quantity];
  return name === undefined ? succeed(undefined) : columnOf(quantity, name, sample);
}

function columnOf(quantity: LogQuantity, named: string, sample: LogSample): Outcome<ChosenColumn, string> {
  const { dimension, usual } = logQuantity(quantity);
  const exact = sample.headers.indexOf(named);
  if (exact >= 0) {
    const spelling = columnName(named, exact).unit;
    const own = spelling === undefined ? undefined : columnUnit(dimension, spelling);
    const unit = own ?? columnUnit(dimension, usual);
    return unit === undefined ? fail(noSuchColumn(named, sample)) : succeed({ index: exact, header: named, unit });
  }
  const [, header = '', spelling = ''] = /^(.+) in (\S+)$/.exec(named) ?? [];
  const index = sample.headers.indexOf(header);
  if (index < 0) return fail(noSuchColumn(named, sample));
  const unit = columnUnit(dimension, spelling);
  if (unit === undefined)
    return fail(`“${spelling}” in “${named}” is no unit of the ${quantity.replaceAll('-', ' ')}.`);
  return succeed({ index, header, unit });
}

function noSuchColumn(named: string, { headers }: LogSample): string {
  const near = named.length < 3 ? undefined : nearestWord(named, headers);
  const hint = near === undefined ? `it has ${headers.slice(0, 20).join(', ')}` : `the nearest is “${near.word}”`;
  return `The log has no column “${named}”; ${hint}.`;
}
