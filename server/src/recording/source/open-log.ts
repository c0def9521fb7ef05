/** Opens a log: how it is written, its first rows, and the SQL that reads its columns as text or as numbers. */
import { open } from 'node:fs/promises';
import type { DuckDBConnection } from '@duckdb/node-api';
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { LogSample } from '../dialect/detect-columns.ts';
import type { ColumnUnit } from '../dialect/log-quantities.ts';
import { type LogText, readLogText } from '../dialect/log-text.ts';
import { type TimeFormat, typedTimeFormat } from '../dialect/time-format.ts';

export interface OpenLog extends LogSample {
  /** What is selected from. */
  readonly from: string;
  /** How many rows there are, about. */
  readonly rowCount: number;
  /** SQL of a column's seconds, NULL where there is no time. */
  time(index: number, format: TimeFormat): string;
  /** SQL of a column's number as it is written, NULL where it is none. */
  number(index: number): string;
  /** Where rows that cannot be taken apart are counted. */
  readonly countsBroken: boolean;
}

/** Enough for a thousand rows, and no more than is read in an instant. */
const HEAD_BYTES = 256 * 1024;
const SAMPLED_ROWS = 1000;
const PARQUET_MARK = 'PAR1';

/** @throws what the file system or DuckDB says of a file that cannot be read */
export async function openLog(path: string, connection: DuckDBConnection): Promise<Outcome<OpenLog, string>> {
  const { head, size } = await readHead(path);
  if (new TextDecoder('latin1').decode(head.subarray(0, 4)) === PARQUET_MARK) return openParquet(path, connection);
  const text = readLogText(head, head.length === size);
  return text.ok ? succeed(openText(path, size, text.value)) : text;
}

async function readHead(path: string): Promise<{ readonly head: Uint8Array; readonly size: number }> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const { bytesRead, buffer } = await file.read(new Uint8Array(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return { head: buffer.subarray(0, bytesRead), size };
  } finally {
    await file.close();
  }
}

/** Every column is read as text, so that what is no number or no time can be counted. */
function openText(path: string, size: number, text: LogText): OpenLog {
  const quote = text.quoted ? '"' : '';
  const columns = text.headers.map((_, index) => `'c${index}': 'VARCHAR'`).join(', ');
  const options = [
    'auto_detect = false, header = false, skip = 1',
    `columns = {${columns}}, delim = ${quoted(text.delimiter)}, quote = '${quote}', escape = '${quote}'`,
    `encoding = '${text.encoding}'`,
    'null_padding = true, strict_mode = false, store_rejects = true',
  ];
  return {
    headers: text.headers,
    rows: text.rows,
    typedTimes: new Map(),
    from: `read_csv(${quoted(path)}, ${options.join(', ')})`,
    rowCount: size / text.rowLength,
    time: (index, format) => format.sql(`c${index}`),
    number: (index) => `try_cast(${text.decimalComma ? `replace(c${index}, ',', '.')` : `c${index}`} AS DOUBLE)`,
    countsBroken: true,
  };
}

async function openParquet(path: string, connection: DuckDBConnection): Promise<Outcome<OpenLog, string>> {
  const from = `read_parquet(${quoted(path)})`;
  const described = (await connection.runAndReadAll(`DESCRIBE SELECT * FROM ${from}`)).getRows();
  if (described.length < 2)
    return fail('The log has one column only; a time, an air temperature and a humidity are needed.');
  const headers = described.map(([name]) => String(name));
  const columns = headers.map((header) => `"${header.replaceAll('"', '""')}"`);
  const asText = columns.map((column) => `${column}::VARCHAR`);
  const sampled = await connection.runAndReadAll(`SELECT ${asText.join(', ')} FROM ${from} LIMIT ${SAMPLED_ROWS}`);
  const counted = `SELECT sum(num_rows)::DOUBLE FROM parquet_file_metadata(${quoted(path)})`;
  const [[rowCount] = []] = (await connection.runAndReadAll(counted)).getRows();
  const typedTimes = described.flatMap(([, type], index) => {
    const format = typedTimeFormat(String(type));
    return format === undefined ? [] : [[index, format] as const];
  });
  const isTime = new Set(typedTimes.map(([index]) => index));
  return succeed({
    headers,
    rows: sampled.getRows().map((row) => row.map((value) => String(value ?? ''))),
    typedTimes: new Map(typedTimes),
    from,
    rowCount: Number(rowCount ?? 0),
    time: (index, format) => format.sql((isTime.has(index) ? columns : asText)[index] ?? ''),
    number: (index) => `try_cast(${columns[index]} AS DOUBLE)`,
    countsBroken: false,
  });
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

/** SQL of a column as a canonical number, NaN where it is none. */
export function canonicalNumber(number: string, { factor, offset }: ColumnUnit): string {
  return orNaN(factor === 1 && offset === 0 ? number : `${number} * ${factor} + ${offset}`);
}

export function orNaN(number: string): string {
  return `coalesce((${number})::DOUBLE, 'nan'::DOUBLE)`;
}
