import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { cablePowerLimit, conductorNeeded, supplyPower } from '../evaluate/supply/facts.ts';
import type { Rule } from './rule.ts';
import { conductorWords, useConductor } from './support/conductor.ts';
import { heaterIsOn } from './support/related.ts';

export const rule: Rule = {
  name: 'cable-cannot-deliver',
  group: 'Supply',
  severity: 'error',
  title: 'The cable cannot carry the power that the point takes, at any voltage.',
  why: 'A constant-power load draws more current the lower its voltage is. Beyond a limit the voltage falls away altogether and the probe restarts again and again.',
  mend: 'Use thicker conductors, a shorter cable or a higher supply voltage.',
  sources: ["Ohm's and Kirchhoff's laws", 'IEC 60228'],
  facts: [supplyPower, cablePowerLimit, conductorNeeded],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const cable = view.point.supply?.value.cable;
      const [asked, limit, needed] = [supplyPower, cablePowerLimit, conductorNeeded].map((key) => view.facts.get(key));
      if (cable === undefined || !isKnown(asked) || !isKnown(limit)) return [];
      return [
        {
          message: () =>
            `The point takes ${showFact(asked)}, and this cable brings ${showFact(limit)} at most. ${conductorWords(view)}`,
          origin: cable.origin,
          facts: isKnown(needed) ? [asked, limit, needed] : [asked, limit],
          related: () => heaterIsOn(view),
          fixes: () => useConductor(view),
        },
      ];
    },
  },
};
