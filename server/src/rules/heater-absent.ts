import { humidityAtUnheatedSensor, riseToSet } from '../evaluate/dryness/dryness.ts';
import { modelHasNoHeater } from '../evaluate/heated-models.ts';
import type { Rule } from './rule.ts';
import { switchHeaterOff, useModelThatHeats } from './support/heater-fixes.ts';

export const rule: Rule = {
  name: 'heater-absent',
  group: 'Dryness and heater',
  severity: 'error',
  title: 'The heater is on, and the model of the probe has none.',
  why: 'The probe stays as cold as the air, and whoever relies on the heater finds a wet sensor.',
  mend: 'Choose a model that has a heater, or switch the heater off where the sensor stays dry without it.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [riseToSet, humidityAtUnheatedSensor],
  fixes: ['choice'],
  check: {
    point: (view) => {
      const { heater, humidityProbeModel } = view;
      const mode = heater.located?.value.mode;
      if (!heater.on || mode === undefined || humidityProbeModel === undefined || !modelHasNoHeater(view)) return [];
      const { id, file, keyOrigin } = humidityProbeModel;
      return [
        {
          message: () =>
            `The heater is set to ${heater.mode}, and the model ${id} has none. Choose a model with a heater.`,
          origin: mode.origin,
          related: () => [{ message: `The model ${id} lists no heater.`, origin: keyOrigin, file }],
          fixes: () => [...useModelThatHeats(view), ...switchHeaterOff(view)],
        },
      ];
    },
  },
};
