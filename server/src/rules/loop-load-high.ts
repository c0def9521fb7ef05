import { isKnown, showFact } from '../evaluate/facts/fact.ts';
import { broken, kept } from '../evaluate/facts/limit.ts';
import { loopVoltageLimit, someLoadIsCarried } from '../evaluate/supply/limits.ts';
import { largestLoopLoad, loopVoltageLeft } from '../evaluate/supply/loop-facts.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';

export const rule: Rule = {
  name: 'loop-load-high',
  group: 'Supply',
  severity: 'error',
  title: 'A current loop does not leave its transmitter enough voltage at 22 mA.',
  why: 'The loop then saturates below full current: high values are cut off, and so is the failure level that should raise an alarm.',
  mend: 'Lower the load in the loop, or raise the supply voltage.',
  leavesAlone: 'Loops whose load is not given, and transmitters whose least voltage the kit does not give.',
  sources: ['NAMUR NE 43', "Kirchhoff's voltage law"],
  facts: [loopVoltageLeft, largestLoopLoad],
  fixes: [],
  check: {
    point: (view) => {
      const { point, facts, transmitterModel, settings } = view;
      const minimum = transmitterModel?.model?.value.loopMinimumVoltage;
      if (minimum === undefined) return [];
      return [...(point.signals?.value ?? [])].flatMap(([name, { value: signal, origin, keyOrigin }]) => {
        const [low, largest] = [broken(loopVoltageLimit(name), view), facts.get(largestLoopLoad(name))];
        const load = signal.kind === 'current-loop' ? signal.load : undefined;
        const shared = settings.header?.defaults?.value.loopLoad;
        const given = load ?? shared;
        if (given === undefined || low === undefined || !isKnown(largest)) return [];
        const left = low.fact;
        const isBearable = kept(someLoadIsCarried(name), view) !== undefined;
        const [ohms, least] = [given, minimum].map(({ value }) => showQuantity(value.value, value.dimension));
        const mend = isBearable
          ? `Lower the load to ${showFact(largest)}, or raise the supply voltage.`
          : 'Raise the supply voltage.';
        return {
          message: () =>
            `A load of ${ohms} leaves the transmitter ${showFact(left)} at 22 mA, under the ${least} that it needs. ${mend}`,
          origin: load?.origin ?? keyOrigin ?? origin,
          facts: isBearable ? [left, largest] : [left],
          related: () => [
            { message: `It needs ${least}.`, origin: minimum.origin, file: transmitterModel?.file ?? '' },
            ...(load === undefined && shared !== undefined
              ? [{ message: `The load of all loops is ${ohms}.`, origin: shared.origin }]
              : []),
          ],
        };
      });
    },
  },
};
