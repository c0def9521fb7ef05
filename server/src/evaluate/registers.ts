/** The registers of a site: which signal occupies which numbers of which device. */
import type { Located } from '../model/located.ts';
import type { PointEvaluation } from './point.ts';
import { registersOf } from './signal-proposals.ts';
import type { RegisterUse } from './signal-use.ts';
import { isUnread } from './unread.ts';

export interface OccupiedRegisters {
  readonly tag: string;
  readonly use: RegisterUse;
  /** Same for the same device. */
  readonly device: string;
  /** In words: 'device 12'. */
  readonly deviceWords: string;
  readonly address: Located<number>;
  /** A signal without a known format takes one at the least. */
  readonly count: number;
}

/**
 * The registers of every point, in the order of the file. A device that neither a signal nor the site names is taken to
 * be the point's own, or that of the transmitter that points share.
 */
export function occupiedRegisters(points: readonly PointEvaluation[]): readonly OccupiedRegisters[] {
  return points.flatMap(({ tag, point, signals, settings }) => {
    const serial = point.transmitter?.value.serial?.value;
    return signals.flatMap((use): OccupiedRegisters[] => {
      if (use.kind !== 'register' || use.signal.address === undefined) return [];
      if (isUnread(use.located, 'device', use.signal.device)) return [];
      const named = use.signal.device?.value ?? settings.header?.defaults?.value.registerDevice?.value;
      const unnamed = serial === undefined ? `point ${tag}` : `transmitter ${serial}`;
      return [
        {
          tag,
          use,
          device: named === undefined ? unnamed : `device ${named}`,
          deviceWords: named === undefined ? 'its device' : `device ${named}`,
          address: use.signal.address,
          count: use.format === undefined ? 1 : registersOf(use.format),
        },
      ];
    });
  });
}

export function overlaps(one: OccupiedRegisters, other: OccupiedRegisters): boolean {
  const [start, otherStart] = [one.address.value, other.address.value];
  return one.device === other.device && start < otherStart + other.count && otherStart < start + one.count;
}

/** The lowest number from the present one on at which a signal's registers are free among the others of its device. */
export function nextFreeAddress(registers: OccupiedRegisters, all: readonly OccupiedRegisters[]): number {
  let address = registers.address.value;
  const isTaken = (): boolean =>
    all.some(
      (other) =>
        other !== registers && overlaps({ ...registers, address: { ...registers.address, value: address } }, other),
    );
  while (isTaken()) address++;
  return address;
}
