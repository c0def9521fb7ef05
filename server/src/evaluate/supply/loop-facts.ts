/** Whether each current loop of a point has voltage enough for its transmitter while it carries 22 mA. */
import { LOOP_LOAD_LINE, maximumLoopLoad, voltageLeftOnLoop } from '../../physics/electrical/current-loop.ts';
import { quantityInput } from '../air-temperature/probe-inputs.ts';
import { type Fact, isKnown, showFact } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';

const NOTES: readonly string[] = [
  'At 22 mA: the failure level of 21 mA (NAMUR NE 43) and a little more.',
  'The loop is fed with the voltage at the transmitter; the resistance of the signal cable is not counted.',
];

/** @param supply the fact of the voltage at the far end of the supply cable */
export function loopFacts(
  { transmitterModel, point, settings }: ResolvedPoint,
  supply: Fact | undefined,
): readonly Fact[] {
  const minimum = transmitterModel?.model?.value.loopMinimumVoltage;
  if (minimum === undefined || !isKnown(supply)) return [];
  return [...(point.signals?.value ?? [])].flatMap(([name, { value: signal }]) => {
    if (signal.kind !== 'current-loop') return [];
    const load = signal.load ?? settings.header?.defaults?.value.loopLoad;
    const inputs = [
      { label: supply.title, text: showFact(supply) },
      ...supply.inputs,
      ...quantityInput('load', load),
      ...quantityInput('least voltage for the transmitter', minimum, transmitterModel?.file),
    ];
    const base = { formulas: [LOOP_LOAD_LINE], inputs, notes: NOTES };
    const largest: Fact = {
      id: `signal/${name}/largest-loop-load`,
      title: `largest load of ${name}`,
      dimension: 'resistance',
      value: maximumLoopLoad(supply.value, minimum.value.value),
      ...base,
    };
    if (load === undefined || load.value.value < 0) return [largest];
    const left: Fact = {
      id: `signal/${name}/loop-voltage-left`,
      title: `voltage that ${name} leaves the transmitter`,
      dimension: 'voltage',
      value: voltageLeftOnLoop(supply.value, load.value.value),
      ...base,
    };
    return [left, largest];
  });
}
