/** Dates as the files write them, `YYYY-MM-DD`, and what was probably meant by others. */

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/;
const YEAR_LAST = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$/;

/** True for a day that the calendar has. */
export function isDate(text: string): boolean {
  const [, year, month, day] = (DATE.exec(text) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined) return false;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() + 1 === month && date.getUTCDate() === day;
}

/** The days that a text may mean; with the year last and slashes, both orders of day and month are in use. */
export function likelyDates(text: string): readonly string[] {
  const yearFirst = YEAR_FIRST.exec(text.trim());
  const yearLast = YEAR_LAST.exec(text.trim());
  const candidates: string[] = [];
  if (yearFirst !== null) candidates.push(written(yearFirst[1], yearFirst[2], yearFirst[3]));
  if (yearLast !== null) {
    const [, first, mark, second, year] = yearLast;
    candidates.push(written(year, second, first));
    if (mark === '/') candidates.push(written(year, first, second));
  }
  return [...new Set(candidates)].filter(isDate);
}

function written(year = '', month = '', day = ''): string {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}
