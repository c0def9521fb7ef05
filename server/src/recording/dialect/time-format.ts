/** How a log writes its times, told from the first of them, and how they are read in SQL as seconds. */
export interface TimeFormat {
  readonly title: string;
  /** `local` jumps twice a year; `start` counts from a start that nobody knows. */
  readonly clock: 'zoned' | 'local' | 'start';
  /** @param column an SQL expression of the text @returns one of the seconds, NULL where it cannot be read */
  sql(column: string): string;
}

/** One form of writing; several may fit the same texts, as with days and months below 13. */
interface Form extends TimeFormat {
  fits(text: string): boolean;
}

const MILLISECONDS_FROM = 1e11;
const SECONDS_FROM = 1e8;

const isNumber = (text: string): boolean => /^-?\d+([.,]\d+)?$/.test(text);
const numberOf = (text: string): number => Number(text.replace(',', '.'));

function counted(title: string, clock: TimeFormat['clock'], factor: string, low: number, high: number): Form {
  return {
    title,
    clock,
    fits: (text) => isNumber(text) && Math.abs(numberOf(text)) >= low && Math.abs(numberOf(text)) < high,
    sql: (column) => `try_cast(replace(${column}, ',', '.') AS DOUBLE)${factor}`,
  };
}

function spelt(title: string, pattern: RegExp, formats: readonly string[]): Form {
  const list = formats.map((format) => `'${format}'`).join(', ');
  return {
    title,
    clock: 'local',
    fits: (text) => pattern.test(text),
    sql: (column) => `epoch(try_strptime(trim(${column}), [${list}]))`,
  };
}

const ISO = /^\d{4}-\d\d-\d\d([T ]\d\d:\d\d(:\d\d(\.\d+)?)?( ?(Z|[+-]\d\d(:?\d\d)?))?)?$/;
const ISO_ZONE = /:\d\d(\.\d+)? ?(Z|[+-]\d\d(:?\d\d)?)$/;
const CLOCKS = ['%H:%M:%S', '%H:%M:%S.%g', '%H:%M'];
const withClocks = (day: string): readonly string[] => CLOCKS.map((clock) => `${day} ${clock}`);

const FORMS: readonly Form[] = [
  {
    title: 'ISO 8601 with its zone',
    clock: 'zoned',
    fits: (text) => ISO.test(text) && ISO_ZONE.test(text),
    sql: (column) => `epoch(try_cast(trim(${column}) AS TIMESTAMPTZ))`,
  },
  {
    title: 'ISO 8601, local time',
    clock: 'local',
    fits: (text) => ISO.test(text) && !ISO_ZONE.test(text),
    sql: (column) => `epoch(try_cast(trim(${column}) AS TIMESTAMP))`,
  },
  spelt('year/month/day, local time', /^\d{4}\/\d\d?\/\d\d? \d/, withClocks('%Y/%m/%d')),
  spelt('day.month.year, local time', /^\d\d?\.\d\d?\.\d{4} \d/, withClocks('%d.%m.%Y')),
  spelt('day/month/year, local time', /^([0-2]?\d|3[01])\/(0?\d|1[0-2])\/\d{4} \d/, withClocks('%d/%m/%Y')),
  spelt('month/day/year, local time', /^(0?\d|1[0-2])\/([0-2]?\d|3[01])\/\d{4} \d/, withClocks('%m/%d/%Y')),
  counted('milliseconds since 1970', 'zoned', ' / 1000', MILLISECONDS_FROM, 1e14),
  counted('seconds since 1970', 'zoned', '', SECONDS_FROM, MILLISECONDS_FROM),
  counted('seconds from the start', 'start', '', 0, SECONDS_FROM),
];

/** So many of the texts must fit; the rest are the log's faults, which are counted. */
const LEAST_SHARE_FITTING = 0.9;

/**
 * The formats that the texts of a column may have: none where it is no time, several where nothing tells them apart.
 * @param texts of the first rows
 */
export function timeFormats(texts: readonly string[]): readonly TimeFormat[] {
  const written = texts.map((text) => text.trim()).filter((text) => text !== '');
  if (written.length === 0) return [];
  const counts = FORMS.map((form) => ({ form, fitting: written.filter((text) => form.fits(text)).length }));
  const best = Math.max(...counts.map(({ fitting }) => fitting));
  return best < LEAST_SHARE_FITTING * written.length
    ? []
    : counts.flatMap(({ form, fitting }) => (fitting === best ? [form] : []));
}

/** The time of a column of a typed file. @param type as DuckDB names it */
export function typedTimeFormat(type: string): TimeFormat | undefined {
  const sql = (column: string): string => `epoch(${column})`;
  if (type === 'TIMESTAMP WITH TIME ZONE') return { title: 'timestamps with their zone', clock: 'zoned', sql };
  if (type.startsWith('TIMESTAMP') || type === 'DATE')
    return { title: 'timestamps of local time', clock: 'local', sql };
  return undefined;
}

/** A time in words: by the calendar, or from the start. */
export function showTime(seconds: number, clock: TimeFormat['clock']): string {
  if (clock === 'start') return `${Number((seconds / 3600).toFixed(3))} h from the start`;
  const milliseconds = Math.round(seconds) * 1000;
  if (Math.abs(milliseconds) > 8.64e15) return 'a time beyond the calendar';
  return new Date(milliseconds).toISOString().replace('.000Z', clock === 'zoned' ? 'Z' : '');
}
