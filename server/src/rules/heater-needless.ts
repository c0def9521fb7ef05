import { humidityAtUnheatedSensor } from '../evaluate/dryness/dryness.ts';
import { needsNoHeat } from '../evaluate/dryness/limits.ts';
import { showFact } from '../evaluate/facts/fact.ts';
import { kept } from '../evaluate/facts/limit.ts';
import { modelHasNoHeater } from '../evaluate/heated-models.ts';
import type { Rule } from './rule.ts';
import { startsCold, switchHeaterOff } from './support/heater-fixes.ts';
import { worstPhase } from './support/related.ts';
import { atCorner } from './support/words.ts';

export const rule: Rule = {
  name: 'heater-needless',
  group: 'Dryness and heater',
  severity: 'information',
  title: 'The heater is on, and the unheated sensor never sees more than 60 %RH.',
  why: 'A heated head no longer knows the air temperature. Without the heater one probe reports everything, with fewer errors and less power.',
  mend: 'Switch the heater off.',
  leavesAlone: 'Heads that enter some phase colder than its dew point: their heater is needed then.',
  sources: ['common practice, no source'],
  facts: [humidityAtUnheatedSensor],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const mode = view.heater.located?.value.mode;
      const humidity = kept(needsNoHeat, view)?.fact;
      if (!view.heater.on || mode === undefined || humidity === undefined) return [];
      if (startsCold(view) || modelHasNoHeater(view)) return [];
      return [
        {
          message: () =>
            `The heater is on, and without it the sensor would see at most ${showFact(humidity)}${atCorner(humidity)}, no more than 60 %RH. Switch it off, unless something else needs it.`,
          origin: mode.origin,
          facts: [humidity],
          related: () => worstPhase(view.space, humidity),
          fixes: () => switchHeaterOff(view),
        },
      ];
    },
  },
};
