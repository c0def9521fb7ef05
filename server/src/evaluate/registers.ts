/** The registers of a site: which signal occupies which numbers of which device. */
import { remembered } from '../base/remembered.ts';
import type { Located } from '../model/located.ts';
import { isUnread } from './facts/unread.ts';
import type { PointEvaluation } from './point.ts';
import type { RegisterUse } from './resolved/signal-use.ts';
import { registersOf } from './signals/signal-proposals.ts';

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

/** Which signals occupy which numbers, by device. */
export class RegisterMap {
  readonly registers: readonly OccupiedRegisters[];
  readonly #occupants = new Map<string, OccupiedRegisters[]>();

  /** @param points in the order of the file: of two signals that share a number the first was there before */
  constructor(points: readonly PointEvaluation[]) {
    this.registers = points.flatMap(registersOfPoint);
    for (const registers of this.registers) {
      for (const place of placesOf(registers, registers.address.value)) {
        const others = this.#occupants.get(place);
        if (others === undefined) this.#occupants.set(place, [registers]);
        else others.push(registers);
      }
    }
  }

  /** The signal that was there before, where one was. */
  earlier(registers: OccupiedRegisters): OccupiedRegisters | undefined {
    for (const place of placesOf(registers, registers.address.value)) {
      const first = this.#occupants.get(place)?.[0];
      if (first !== undefined && first !== registers) return first;
    }
    return undefined;
  }

  /** The lowest number from the present one on at which a signal's registers are free of others. */
  nextFreeAddress(registers: OccupiedRegisters): number {
    const isTaken = (place: string): boolean =>
      this.#occupants.get(place)?.some((occupant) => occupant !== registers) === true;
    let address = registers.address.value;
    while (placesOf(registers, address).some(isTaken)) address++;
    return address;
  }
}

/** The numbers that registers occupy from an address on, each with its device. */
function placesOf({ device, count }: OccupiedRegisters, address: number): readonly string[] {
  return Array.from({ length: count }, (_, index) => `${device}/${address + index}`);
}

/**
 * The registers of a point. A device that neither a signal nor the site names is taken to be the point's own, or that
 * of the transmitter that points share.
 */
const registersOfPoint = remembered(
  ({ tag, point, signals, settings }: PointEvaluation): readonly OccupiedRegisters[] => {
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
  },
);
