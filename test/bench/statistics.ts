export function median(values: readonly number[]): number {
  return percentile(values, 50);
}

/** @param rank from 0 to 100, nearest rank */
export function percentile(values: readonly number[], rank: number): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.max(0, Math.ceil((rank / 100) * sorted.length) - 1)] ?? Number.NaN;
}
