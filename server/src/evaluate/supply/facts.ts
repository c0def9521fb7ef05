/** The voltage that reaches the probe or the transmitter through its cable, and the conductor that brings enough. */
import { succeed } from '../../base/outcome.ts';
import { remembered } from '../../base/remembered.ts';
import { exceeds } from '../../base/rounding.ts';
import { CONDUCTOR_RESISTANCE } from '../../physics/electrical/conductors.ts';
import { SUPPLY_VOLTAGE, smallestConductorThatWorks, voltageAtLoad } from '../../physics/electrical/supply-cable.ts';
import type { Given } from '../facts/given.ts';
import { pointFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
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

/** Of the transmitter where the supply feeds one; none without a supply. */
export const voltageAtProbe = pointFact('voltage-at-probe', {
  title: ({ point }) => `least voltage at the ${point.transmitter === undefined ? 'probe' : 'transmitter'}`,
  dimension: 'voltage',
  compute: (point) => {
    const fed = fedThrough(point);
    if (fed === undefined) return undefined;
    if (!fed.ok) {
      return { value: undefined, missing: fed.problem, derivation: () => ({ inputs: [], formulas: FORMULAS }) };
    }
    const { reached } = fed.value;
    const derivation = () => ({ ...explained(fed.value), formulas: FORMULAS });
    if (reached.ok) return { value: reached.value, derivation };
    return { value: undefined, missing: 'the cable cannot carry this power at any voltage', derivation };
  },
});

/** Only where the cable cannot carry it at any voltage. */
export const supplyPower = pointFact('supply-power', {
  title: 'power asked of the cable besides resistive loads',
  dimension: 'power',
  compute: (point) => {
    const fed = fedThrough(point);
    if (fed?.ok !== true || fed.value.reached.ok) return undefined;
    const { value } = fed;
    return { value: value.path.load.constantPower, derivation: () => ({ ...explained(value), formulas: [] }) };
  },
});

/** Only where the cable cannot carry what is asked at any voltage. */
export const cablePowerLimit = pointFact('cable-power-limit', {
  title: 'largest power that the cable brings',
  dimension: 'power',
  compute: (point) => {
    const fed = fedThrough(point);
    if (fed?.ok !== true || fed.value.reached.ok) return undefined;
    const relation = 'P(max) = V(s)² / (4 R (1 + R G))';
    const derivation = () => ({ ...explained(fed.value), relation, formulas: FORMULAS });
    return { value: fed.value.reached.problem.maximumPower, derivation };
  },
});

/** Only where the present conductor brings too little. */
export const conductorNeeded = pointFact('conductor-needed', {
  title: 'smallest conductor that brings enough voltage',
  dimension: 'area',
  compute: (point) => {
    const fed = fedThrough(point);
    if (fed?.ok !== true) return undefined;
    const { path, reached } = fed.value;
    const { supply, heater } = leastVoltages(point, path);
    const required = Math.max(supply ?? 0, heater ?? 0);
    const isEnough = reached.ok && !exceeds(required, reached.value);
    if (path.cable === undefined || isEnough) return undefined;
    const smallest = smallestConductorThatWorks(path.sourceVoltage, path.cable, path.load, required);
    const relation = 'the least size sold with which the voltage at the far end is enough';
    const derivation = () => ({ inputs: path.inputs, relation, formulas: FORMULAS, notes: NOTES });
    if (smallest === undefined) return { value: undefined, missing: 'no conductor sold brings enough', derivation };
    return { value: smallest.crossSection, derivation };
  },
});

interface Fed {
  readonly path: SupplyPath;
  readonly reached: ReturnType<typeof voltageAtLoad>;
}

/** Undefined without a supply. */
const fedThrough = remembered((point: ResolvedPoint): Given<Fed> | undefined => {
  if (point.point.supply === undefined) return undefined;
  const path = supplyPath(point);
  if (!path.ok) return path;
  const { sourceVoltage, loopResistance, load } = path.value;
  return succeed({ path: path.value, reached: voltageAtLoad(sourceVoltage, loopResistance, load) });
});

function explained({ path: { ends, inputs } }: Fed) {
  const notes = ends === 'probe' ? NOTES : [...NOTES, 'The leads from the transmitter to the probe are not counted.'];
  return { inputs, notes };
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
