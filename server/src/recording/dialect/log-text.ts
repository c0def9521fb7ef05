/** How a log of text is written, told from its first bytes: its encoding, what parts its columns, its decimal sign. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';

export interface LogText {
  readonly encoding: 'utf-8' | 'utf-16' | 'latin-1';
  readonly delimiter: string;
  readonly decimalComma: boolean;
  readonly quoted: boolean;
  readonly headers: readonly string[];
  /** The first rows, as text. */
  readonly rows: readonly (readonly string[])[];
  /** Bytes of a row, about. */
  readonly rowLength: number;
}

const DELIMITERS = [';', '\t', ',', '|'];
const MOST_ROWS = 1000;

/** @param head the first bytes of the file @param whole true where they are all of it */
export function readLogText(head: Uint8Array, whole: boolean): Outcome<LogText, string> {
  const { encoding, text } = decode(head);
  const lines = text.split(/\r\n|\n|\r/);
  if (!whole) lines.pop(); // it may be cut
  const written = lines.filter((line) => line.trim() !== '');
  const [first, ...rest] = written;
  if (first === undefined)
    return fail(whole ? 'The log is empty.' : 'The first line of the log is too long to be one.');
  const sample = rest.slice(0, MOST_ROWS);
  const delimiter = delimiterOf(first, sample);
  if (delimiter === undefined) {
    return fail('The first row of the log names one column only; its columns are parted by comma, semicolon or tab.');
  }
  const headers = cellsOf(first, delimiter).map((header) => header.trim());
  if (headers.every((header) => /^-?\d/.test(header))) {
    return fail('The first row of a log names its columns, and this one starts with values.');
  }
  const rows = sample.map((line) => cellsOf(line, delimiter));
  const cells = rows.flat();
  return succeed({
    encoding,
    delimiter,
    decimalComma: cells.some((cell) => /^\s*-?\d+,\d+\s*$/.test(cell)),
    quoted: text.includes('"'),
    headers,
    rows,
    rowLength: Math.max(1, head.length / written.length),
  });
}

function decode(head: Uint8Array): { readonly encoding: LogText['encoding']; readonly text: string } {
  const [first, second] = head;
  if (first === 0xff && second === 0xfe) return { encoding: 'utf-16', text: new TextDecoder('utf-16le').decode(head) };
  try {
    // A character that the end of the sample cuts is no fault.
    const text = new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return { encoding: 'utf-8', text };
  } catch {
    return { encoding: 'latin-1', text: new TextDecoder('latin1').decode(head) };
  }
}

/** What parts the first row into several columns, and most rows into as many; a decimal comma parts too few. */
function delimiterOf(first: string, sample: readonly string[]): string | undefined {
  const candidates = DELIMITERS.map((delimiter) => {
    const columns = cellsOf(first, delimiter).length;
    const alike = sample.filter((line) => cellsOf(line, delimiter).length === columns).length;
    return { delimiter, columns, alike };
  }).filter(({ columns }) => columns > 1);
  candidates.sort((one, other) => other.alike - one.alike || other.columns - one.columns);
  return candidates[0]?.delimiter;
}

/** The cells of a line; a quoted one may hold the delimiter, and a doubled quote stands for one. */
function cellsOf(line: string, delimiter: string): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let inQuotes = false;
  for (let at = 0; at < line.length; at++) {
    const sign = line[at];
    if (sign === '"') {
      if (inQuotes && line[at + 1] === '"') {
        cell += sign;
        at++;
      } else inQuotes = !inQuotes;
    } else if (sign === delimiter && !inQuotes) {
      cells.push(cell);
      cell = '';
    } else cell += sign;
  }
  cells.push(cell);
  return cells;
}
