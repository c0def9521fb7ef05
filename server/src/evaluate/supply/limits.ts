/** The voltages that probes, transmitters, heaters and loops need. */
import { exceeds } from '../../base/rounding.ts';
import type { Located } from '../../model/located.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import { boundIf, endBound, figureBound, type Limit, limit, writtenBound } from '../facts/limit.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { voltageAtProbe } from './facts.ts';
import { largestLoopLoad, loopVoltageLeft } from './loop-facts.ts';

/** What is fed at the far end of the cable, and the voltages that it works with. */
export interface FedDevice {
  readonly words: 'probe' | 'transmitter';
  readonly file: string;
  readonly range: Located<QuantityRange>;
}

export function fedDevice({ point, humidityProbeModel, transmitterModel }: ResolvedPoint): FedDevice | undefined {
  const ref = point.transmitter === undefined ? humidityProbeModel : transmitterModel;
  const range = ref?.model?.value.supply?.value.voltage;
  if (ref === undefined || range === undefined) return undefined;
  return { words: point.transmitter === undefined ? 'probe' : 'transmitter', file: ref.file, range };
}

export const supplyVoltageLimit = limit(voltageAtProbe, 'at least', (point: ResolvedPoint) =>
  boundIf(fedDevice(point)?.range, (range) => endBound(range, 'low')),
);

/** While the heater is on. */
export const heaterVoltageLimit = limit(voltageAtProbe, 'at least', ({ heater, humidityProbeModel }: ResolvedPoint) =>
  heater.on ? boundIf(humidityProbeModel?.model?.value.heater?.value.minimumVoltage, writtenBound) : undefined,
);

/** @param signal the name of a current loop */
export function loopVoltageLimit(signal: string): Limit<ResolvedPoint, 'voltage'> {
  return limit(loopVoltageLeft(signal), 'at least', ({ transmitterModel }) =>
    boundIf(transmitterModel?.model?.value.loopMinimumVoltage, writtenBound),
  );
}

/** Broken where the transmitter gets too little even without a load. */
export function someLoadIsCarried(signal: string): Limit<ResolvedPoint, 'resistance'> {
  return limit(largestLoopLoad(signal), 'above', () => figureBound(0, 'resistance'));
}

/** V. The file does not say whether a voltage alternates, so that the lower limit counts. */
export const HAZARDOUS_VOLTAGE = 50;

export function isHazardousVoltage(volts: number): boolean {
  return exceeds(volts, HAZARDOUS_VOLTAGE);
}
