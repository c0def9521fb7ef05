import { unlistedExposures } from '../evaluate/equipment/model-limits.ts';
import type { Rule } from './rule.ts';
import { installedModels } from './support/installed-models.ts';

export const rule: Rule = {
  name: 'exposure-not-withstood',
  group: 'Model limits',
  severity: 'warning',
  title: 'The space exposes a probe to something that its model does not list.',
  why: 'Gases, dust and cleaning eat sensors, filters and seals. A probe that does not withstand them drifts within weeks.',
  mend: 'Choose a model that lists the exposure, or add it to the kit where the data sheet says so.',
  leavesAlone: 'Models whose kit entry has no `withstands` at all: nothing is known of them.',
  sources: ["the maker's data sheet, as the kit gives it"],
  facts: [],
  fixes: [],
  check: {
    point: (view) =>
      installedModels(view).flatMap(({ words, id, file, model, named }) => {
        const { withstands } = model.value;
        if (withstands === undefined || view.space === undefined) return [];
        const unlisted = unlistedExposures(model.value, view.space.located.value);
        if (unlisted.length === 0) return [];
        const names = unlisted.map(({ value }) => value).join(', ');
        return {
          message: () =>
            `The space exposes the ${words} to ${names}, which the model ${id} does not list. Choose a model that withstands it.`,
          origin: named.origin,
          related: () => [
            ...unlisted.map(({ value, origin }) => ({ message: `The space exposes to ${value}.`, origin })),
            { message: 'What the model withstands.', origin: withstands.origin, file },
          ],
        };
      }),
  },
};
