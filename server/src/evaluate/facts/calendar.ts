/** Reckoning with days, written `YYYY-MM-DD`. */
import type { CalendarDate } from '../../model/model-types.generated.ts';
import { YEAR_SECONDS } from '../../quantity/dimension.ts';
import { calendarMonths, type Quantity } from '../../quantity/quantity.ts';

export const DAY_SECONDS = 86_400;

export const YEAR_DAYS = YEAR_SECONDS / DAY_SECONDS;
export const MONTH_SECONDS = (YEAR_DAYS / 12) * DAY_SECONDS;

const LAST_DAY = Date.UTC(9999, 11, 31);

/**
 * The day an interval later: months and years by the calendar, anything else in whole days. What ends in a shorter
 * month ends with it.
 * @returns undefined beyond the year 9999
 */
export function dayAfter(day: CalendarDate, interval: Quantity): CalendarDate | undefined {
  const months = calendarMonths(interval);
  if (months === undefined) return daysAfter(day, interval.value / DAY_SECONDS);
  const [year, month, date] = parts(day);
  const lastOfMonth = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return written(Date.UTC(year, month - 1 + months, Math.min(date, lastOfMonth)));
}

/** The day so many whole days later, or earlier; undefined beyond the year 9999. */
export function daysAfter(day: CalendarDate, days: number): CalendarDate | undefined {
  return written(utcOf(day) + Math.floor(days) * DAY_SECONDS * 1000);
}

/** Days from one day to another; negative where that is earlier. */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return secondsBetween(from, to) / DAY_SECONDS;
}

/** Seconds from one day to another; negative where that is earlier. */
export function secondsBetween(from: CalendarDate, to: CalendarDate): number {
  return (utcOf(to) - utcOf(from)) / 1000;
}

function utcOf(day: CalendarDate): number {
  const [year, month, date] = parts(day);
  return Date.UTC(year, month - 1, date);
}

function written(utc: number): CalendarDate | undefined {
  return utc <= LAST_DAY ? new Date(utc).toISOString().slice(0, 10) : undefined;
}

function parts(day: CalendarDate): readonly [number, number, number] {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return [year, month, date];
}
