/** The voltage that reaches the probe or the transmitter through its cable, and the conductor that brings enough. */
import { CONDUCTOR_RESISTANCE } from '../../physics/electrical/conductors.ts';
import { SUPPLY_VOLTAGE, smallestConductorThatWorks, voltageAtLoad } from '../../physics/electrical/supply-cable.ts';
import type { Fact } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import { type SupplyPath, supplyPath } from './load.ts';

const FORMULAS = [SUPPLY_VOLTAGE, CONDUCTOR_RESISTANCE];

const NOTES: readonly string[] = [
  'The supply gives its least voltage, as written; the electronics and the heater take their full power.',
  'The conductors are flexible plain copper, class 5, as hot as the hottest surroundings.',
];

/** What is wanted of the voltage at the far end, V. */
interface LeastVoltages {
  readonly supply: number | undefined;
  readonly heater: number | undefined;
}

export function supplyFacts(resolved: ResolvedPoint): readonly Fact[] {
  if (resolved.point.supply === undefined) return [];
  const path = supplyPath(resolved);
  if (!path.ok) {
    const ends = resolved.point.transmitter === undefined ? 'probe' : 'transmitter';
    return [{ value: undefined, missing: path.problem, inputs: [], notes: [], ...voltageBase(ends) }];
  }
  const { ends, sourceVoltage, loopResistance, load, inputs } = path.value;
  const reached = voltageAtLoad(sourceVoltage, loopResistance, load);
  const least = leastVoltages(resolved, path.value);
  const notes = ends === 'probe' ? NOTES : [...NOTES, 'The leads from the transmitter to the probe are not counted.'];
  const conductor = conductorFact(path.value, least, reached.ok ? reached.value : undefined);
  if (reached.ok) {
    const voltage = { value: reached.value, inputs, notes, ...voltageBase(ends) };
    return [voltage, ...(conductor === undefined ? [] : [conductor])];
  }
  const missing = 'the cable cannot carry this power at any voltage';
  return [
    { value: undefined, missing, inputs, notes, ...voltageBase(ends) },
    {
      id: 'supply-power',
      title: 'power asked of the cable besides resistive loads',
      dimension: 'power',
      value: load.constantPower,
      inputs,
      formulas: [],
      notes,
    },
    {
      id: 'cable-power-limit',
      title: 'largest power that the cable brings',
      dimension: 'power',
      value: reached.problem.maximumPower,
      relation: 'P(max) = V(s)² / (4 R (1 + R G))',
      inputs,
      formulas: FORMULAS,
      notes,
    },
    ...(conductor === undefined ? [] : [conductor]),
  ];
}

function voltageBase(ends: SupplyPath['ends']) {
  return {
    id: 'voltage-at-probe',
    title: `least voltage at the ${ends}`,
    dimension: 'voltage' as const,
    formulas: FORMULAS,
  };
}

/** At the far end of the cable: the range of what hangs there, and the heater while it is on. */
function leastVoltages(resolved: ResolvedPoint, { ends }: SupplyPath): LeastVoltages {
  const { humidityProbeModel, transmitterModel, heater } = resolved;
  const model = humidityProbeModel?.model?.value;
  const demand = ends === 'probe' ? model?.supply : transmitterModel?.model?.value.supply;
  return {
    supply: demand?.value.voltage?.value.low,
    heater: heater.on ? model?.heater?.value.minimumVoltage?.value.value : undefined,
  };
}

/** Only where the present conductor brings too little. */
function conductorFact(
  path: SupplyPath,
  { supply, heater }: LeastVoltages,
  reached: number | undefined,
): Fact | undefined {
  const required = Math.max(supply ?? 0, heater ?? 0);
  const enough = reached !== undefined && reached >= required;
  if (path.cable === undefined || enough) return undefined;
  const smallest = smallestConductorThatWorks(path.sourceVoltage, path.cable, path.load, required);
  const base = {
    id: 'conductor-needed',
    title: 'smallest conductor that brings enough voltage',
    dimension: 'area' as const,
    relation: 'the least size sold with which the voltage at the far end is enough',
    inputs: path.inputs,
    formulas: FORMULAS,
    notes: NOTES,
  };
  if (smallest === undefined) return { value: undefined, missing: 'no conductor sold brings enough', ...base };
  return { value: smallest.crossSection, ...base };
}
