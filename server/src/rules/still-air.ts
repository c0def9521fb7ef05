import { showQuantity } from '../quantity/format-quantity.ts';
import type { Rule } from './rule.ts';

/** m/s. */
const STILL_AIR_SPEED = 0.1;

export const rule: Rule = {
  name: 'still-air',
  group: 'Mounting',
  severity: 'information',
  title: 'The air may be still, so that response and heater figures are those of still air.',
  why: 'Data sheets give the response at 1 m/s. In still air probes take several times as long, a heated head warms its own surroundings, and the air at the probe may not be that of the space.',
  mend: 'Mount the point where air always moves, or count on the slower response.',
  leavesAlone: 'Phases without an air speed.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: [],
  check: {
    space: (space) =>
      space.phases.flatMap(({ envelope: { speed, phase } }) => {
        if (speed === undefined || speed.value.low >= STILL_AIR_SPEED) return [];
        const [least, limit] = [speed.value.low, STILL_AIR_SPEED].map((value) => showQuantity(value, 'speed'));
        const where = phase === undefined ? '' : ` in phase ${phase}`;
        return {
          message: () =>
            `The air may be as slow as ${least}${where}, under ${limit}: response, rise and warming are computed for still air. Mount the point where air always moves, if that is possible.`,
          origin: speed.origin,
        };
      }),
  },
};
