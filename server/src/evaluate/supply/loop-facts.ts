/** Whether each current loop of a point has voltage enough for its transmitter while it carries 22 mA. */

import type { Located } from '../../model/located.ts';
import { LOOP_LOAD_LINE, maximumLoopLoad, voltageLeftOnLoop } from '../../physics/electrical/current-loop.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { Derivation } from '../facts/declared-fact.ts';
import { isKnown, type KnownFact, showFact } from '../facts/fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import { signalFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { voltageAtProbe } from './facts.ts';

const NOTES: readonly string[] = [
  'At 22 mA: the failure level of 21 mA (NAMUR NE 43) and a little more.',
  'The loop is fed with the voltage at the transmitter; the resistance of the signal cable is not counted.',
];

/** What the loop's load leaves of the voltage at the transmitter. */
export const loopVoltageLeft = signalFact('loop-voltage-left', {
  title: (name) => `voltage that ${name} leaves the transmitter`,
  dimension: 'voltage',
  compute: (point, name) => {
    const loop = loopOf(point, name);
    const load = loop?.load?.value.value;
    if (loop === undefined || load === undefined || load < 0) return undefined;
    return { value: voltageLeftOnLoop(loop.supply.value, load), derivation: () => explained(loop) };
  },
});

export const largestLoopLoad = signalFact('largest-loop-load', {
  title: (name) => `largest load of ${name}`,
  dimension: 'resistance',
  compute: (point, name) => {
    const loop = loopOf(point, name);
    if (loop === undefined) return undefined;
    const value = maximumLoopLoad(loop.supply.value, loop.minimum.value.value);
    return { value, derivation: () => explained(loop) };
  },
});

interface Loop {
  /** The loop is fed with the voltage at the far end of the supply cable. */
  readonly supply: KnownFact;
  readonly load: Located<Quantity> | undefined;
  readonly minimum: Located<Quantity>;
  readonly file: string | undefined;
}

/** Undefined for a signal that is no current loop, or without the voltages that it needs and gets. */
function loopOf({ transmitterModel, point, settings, facts }: ResolvedPoint, name: string): Loop | undefined {
  const signal = point.signals?.value.get(name)?.value;
  const minimum = transmitterModel?.model?.value.loopMinimumVoltage;
  const supply = facts.get(voltageAtProbe);
  if (signal?.kind !== 'current-loop' || minimum === undefined || !isKnown(supply)) return undefined;
  const load = signal.load ?? settings.header?.defaults?.value.loopLoad;
  return { supply, load, minimum, file: transmitterModel?.file };
}

function explained({ supply, load, minimum, file }: Loop): Derivation {
  const inputs = [
    { label: supply.title, text: showFact(supply) },
    ...supply.inputs,
    ...quantityInput('load', load),
    ...quantityInput('least voltage for the transmitter', minimum, file),
  ];
  return { inputs, formulas: [LOOP_LOAD_LINE], notes: NOTES };
}
