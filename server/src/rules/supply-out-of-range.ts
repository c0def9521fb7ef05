import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { conductorNeeded, voltageAtProbe } from '../evaluate/supply/facts.ts';
import { fedDevice, supplyVoltageLimit } from '../evaluate/supply/limits.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import type { FindingDraft, Related, Rule } from './rule.ts';
import { cableIs, conductorWords, useConductor } from './support/conductor.ts';

export const rule: Rule = {
  name: 'supply-out-of-range',
  group: 'Supply',
  severity: 'error',
  title: 'The voltage at the probe or transmitter lies outside its range, the cable counted.',
  why: 'Too little voltage makes the electronics drop out, often only when the heater draws its current; too much destroys them.',
  mend: 'Use thicker conductors, a shorter cable or another supply.',
  leavesAlone:
    'The probe behind a transmitter, which feeds it; supplies whose voltage is not given, and what a cable takes of it where the load is not. Heaters that have too little: heater-supply-low speaks of those.',
  sources: ["IEC 60228 and Ohm's law", "the maker's data sheet, as the kit gives it"],
  facts: [voltageAtProbe, conductorNeeded],
  fixes: ['choice'],
  check: { point: outOfRange },
};

function outOfRange(view: PointEvaluation): readonly FindingDraft[] {
  const voltage = view.point.supply?.value.voltage;
  const demand = fedDevice(view);
  if (voltage === undefined || demand === undefined) return [];
  const { low, high } = demand.range.value;
  const range = showRange(low, high, 'voltage');
  const related = (): readonly Related[] => [
    { message: `Its range is ${range}.`, origin: demand.range.origin, file: demand.file },
  ];
  const given = showQuantity(voltage.value.value, 'voltage');
  const outside = (side: 'over' | 'under', wanted: string): FindingDraft => ({
    message: () =>
      `The supply of ${given} is ${side} the ${range} of the ${demand.words}. Use a ${wanted} supply voltage.`,
    origin: voltage.origin,
    related,
  });
  // Hardly loaded, the cable drops next to nothing.
  if (voltage.value.value > high) return [outside('over', 'lower')];
  if (voltage.value.value < low) return [outside('under', 'higher')];
  const reached = broken(supplyVoltageLimit, view)?.fact;
  const needed = view.facts.get(conductorNeeded);
  if (reached === undefined) return [];
  return [
    {
      message: () =>
        `Of ${given} only ${showFact(reached)} reach the ${demand.words}, under its range of ${range}. ${conductorWords(view)}`,
      origin: voltage.origin,
      facts: isKnown(needed) ? [reached, needed] : [reached],
      related: () => [...related(), ...cableIs(view)],
      fixes: () => useConductor(view),
    },
  ];
}
