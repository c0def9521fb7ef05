import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken, kept } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { conductorNeeded, voltageAtProbe } from '../evaluate/supply/facts.ts';
import { heaterVoltageLimit, supplyVoltageLimit } from '../evaluate/supply/limits.ts';
import type { Located } from '../model/located.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { FindingDraft, Related, Rule } from './rule.ts';
import { cableIs, conductorWords, useConductor } from './support/conductor.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'heater-supply-low',
  group: 'Supply',
  severity: 'error',
  title: 'The voltage at the probe is under the least that its heater works with.',
  why: 'The heater stays off, or below its rise, while everything else works: the sensor condenses and nobody looks for the cause in the cable.',
  mend: 'Use thicker conductors, a shorter cable or another supply.',
  leavesAlone:
    'Supplies under the range of the probe itself: supply-out-of-range speaks of those. On a service cable it is information: the low-supply notice is expected there and clears on the installed supply.',
  sources: ["IEC 60228 and Ohm's law", "the maker's data sheet, as the kit gives it", 'common practice, no source'],
  facts: [voltageAtProbe, conductorNeeded],
  fixes: ['choice'],
  check: { point: tooLow },
};

function tooLow(view: PointEvaluation): readonly FindingDraft[] {
  const { heater, humidityProbeModel, point, facts } = view;
  const minimum = humidityProbeModel?.model?.value.heater?.value.minimumVoltage;
  const supply = point.supply;
  if (!heater.on || supply === undefined || minimum === undefined) return [];
  const least = showQuantity(minimum.value.value, 'voltage');
  const related = (): readonly Related[] => [
    { message: `The heater works from ${least}.`, origin: minimum.origin, file: humidityProbeModel?.file ?? '' },
    ...heaterIsOn(view),
  ];
  const reached = facts.get(voltageAtProbe);
  const needed = facts.get(conductorNeeded);
  if (supply.value.kind?.value === 'service-cable') {
    if (kept(heaterVoltageLimit, view) !== undefined) return [];
    const brings = isKnown(reached) ? `brings ${showFact(reached)}` : 'is not known to bring that';
    return [
      {
        message: () =>
          `The heater works from ${least}, and the service cable ${brings}. Expect its low-supply notice; it clears on the installed supply, so look again there.`,
        origin: supply.value.kind.origin,
        severity: 'information',
        facts: isKnown(reached) ? [reached] : [],
        related,
      },
    ];
  }
  const isLow = broken(heaterVoltageLimit, view) !== undefined;
  if (!isKnown(reached) || !isLow || broken(supplyVoltageLimit, view) !== undefined) return [];
  return [
    {
      message: () =>
        `Only ${showFact(reached)} reach the ${endOf(view)}, and the heater works from ${least}. ${conductorWords(view)}`,
      origin: placeOf(supply.value.cable, supply.value.voltage) ?? supply.origin,
      facts: isKnown(needed) ? [reached, needed] : [reached],
      related: () => [...related(), ...cableIs(view)],
      fixes: () => useConductor(view),
    },
  ];
}

function placeOf(cable: Located<unknown> | undefined, voltage: Located<Quantity> | undefined) {
  return cable?.origin ?? voltage?.origin;
}

function endOf({ point }: PointEvaluation): string {
  return point.transmitter === undefined ? 'probe' : 'transmitter';
}
