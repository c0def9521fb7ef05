/** What hangs on the supply of a point, and the cable between. */
import { fail, succeed } from '../../base/outcome.ts';
import { conductorOf } from '../../physics/electrical/conductors.ts';
import {
  cableLoopResistance,
  resistiveConductance,
  type SupplyCable,
  type SupplyLoad,
} from '../../physics/electrical/supply-cable.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { FactInput } from '../facts/fact.ts';
import { type Given, given, positive } from '../facts/given.ts';
import { quantityInput } from '../facts/inputs.ts';
import { isUnread } from '../facts/unread.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

/** The supply as far as the probe, or as far as the transmitter where there is one. */
export interface SupplyPath {
  readonly ends: 'probe' | 'transmitter';
  /** The least voltage at the near end, V. */
  readonly sourceVoltage: number;
  /** Absent where the supply has no cable. */
  readonly cable: SupplyCable | undefined;
  /** Out and back, ohm; 0 without a cable. */
  readonly loopResistance: number;
  readonly load: SupplyLoad;
  readonly inputs: readonly FactInput[];
}

/** °C, at which IEC 60228 states the resistance of conductors. */
const REFERENCE_CELSIUS = 20;

export function supplyPath(resolved: ResolvedPoint): Given<SupplyPath> {
  const { point, settings, entry } = resolved;
  const supply = point.supply?.value;
  if (isUnread(point.supply, 'cable', supply?.cable)) return fail('the cable cannot be read');
  if (isUnread(entry.located, 'transmitter', point.transmitter)) return fail('the transmitter cannot be read');
  const source = given(supply?.voltage, 'no supply voltage is given');
  if (!source.ok) return source;
  const load = supplyLoad(resolved);
  if (!load.ok) return load;
  const ends = point.transmitter === undefined ? 'probe' : 'transmitter';
  const common = { ends, sourceVoltage: source.value.value.value, load: load.value.load } as const;
  const inputs = [...quantityInput('supply voltage', source.value), ...load.value.inputs];
  const cable = supply?.cable?.value;
  if (cable === undefined) return succeed({ cable: undefined, loopResistance: 0, inputs, ...common });
  const length = given(cable.length, 'the cable has no length');
  if (!length.ok) return length;
  const section = positive(cable.conductor, 'the cable has no conductor');
  if (!section.ok) return section;
  const { surroundings } = settings;
  const celsius = surroundings?.value.high ?? REFERENCE_CELSIUS;
  const ofCable = { length: Math.max(0, length.value.value.value), celsius };
  return succeed({
    cable: ofCable,
    loopResistance: cableLoopResistance(conductorOf(section.value), ofCable),
    inputs: [
      ...inputs,
      ...quantityInput('cable length, one way', cable.length),
      ...quantityInput('conductor', cable.conductor),
      {
        label: 'temperature of the cable',
        text: `${showQuantity(celsius, 'temperature')}, ${surroundings === undefined ? 'none given' : 'the hottest surroundings'}`,
        ...(surroundings === undefined ? {} : { origin: surroundings.origin }),
      },
    ],
    ...common,
  });
}

interface LoadWithInputs {
  readonly load: SupplyLoad;
  readonly inputs: readonly FactInput[];
}

function supplyLoad(resolved: ResolvedPoint): Given<LoadWithInputs> {
  const { point, heater, humidityProbeModel, transmitterModel } = resolved;
  const ofProbe = humidityProbeModel?.model?.value.supply?.value.power;
  const probe = positive(ofProbe, 'the kit gives no power of the humidity probe');
  if (!probe.ok) return probe;
  const ofTransmitter = transmitterModel?.model?.value.supply?.value.power;
  const transmitter =
    point.transmitter === undefined ? succeed(0) : positive(ofTransmitter, 'the kit gives no power of the transmitter');
  if (!transmitter.ok) return transmitter;
  const electronics = probe.value + transmitter.value;
  const inputs = [
    ...quantityInput('power of the humidity probe', ofProbe, humidityProbeModel?.file),
    ...quantityInput('power of the transmitter', ofTransmitter, transmitterModel?.file),
  ];
  if (!heater.known) return fail('the heater cannot be read');
  if (!heater.on) return succeed({ load: { constantPower: electronics, conductance: 0 }, inputs });
  const ofHeater = heaterLoad(resolved);
  if (!ofHeater.ok) return ofHeater;
  const { constantPower, conductance } = ofHeater.value.load;
  return succeed({
    load: { constantPower: electronics + constantPower, conductance },
    inputs: [...inputs, ...ofHeater.value.inputs],
  });
}

function heaterLoad({ humidityProbeModel }: ResolvedPoint): Given<LoadWithInputs> {
  const model = humidityProbeModel?.model?.value.heater?.value;
  const power = positive(model?.power, 'the kit gives no power of the heater');
  if (!power.ok) return power;
  const kind = given(model?.kind?.value, 'the kit does not say how the heater loads the supply');
  if (!kind.ok) return kind;
  const inputs = quantityInput('power of the heater', model?.power, humidityProbeModel?.file);
  if (kind.value === 'constant-power') return succeed({ load: { constantPower: power.value, conductance: 0 }, inputs });
  const rated = positive(model?.ratedVoltage, 'the kit gives no rated voltage of the heater');
  if (!rated.ok) return rated;
  return succeed({
    load: { constantPower: 0, conductance: resistiveConductance(power.value, rated.value) },
    inputs: [...inputs, ...quantityInput('rated voltage', model?.ratedVoltage, humidityProbeModel?.file)],
  });
}
