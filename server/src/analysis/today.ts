/** The present day, `YYYY-MM-DD`, by the clock and the time zone of this machine. */
export function systemDay(): string {
  const now = new Date();
  const [year, month, day] = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
