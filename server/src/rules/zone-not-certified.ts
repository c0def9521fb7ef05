import { uncertifiedZones } from '../evaluate/equipment/model-limits.ts';
import type { Rule } from './rule.ts';
import { installedModels } from './support/installed-models.ts';

export const rule: Rule = {
  name: 'zone-not-certified',
  group: 'Model limits',
  severity: 'error',
  title: 'A probe stands in a flammable zone that its model is not certified for.',
  why: 'Electric equipment, and a heated head above all, can ignite a flammable atmosphere. Only equipment certified for the zone, its gas group and its temperature class may be installed there.',
  mend: 'Choose a model certified for the zone. Local codes and a licensed practitioner decide, not this check: it knows no gas groups and no temperature classes.',
  leavesAlone: 'Transmitters, which are taken to hang outside the zone.',
  sources: [
    'Directive 2014/34/EU, Annex I: equipment for zone 0 suits zones 1 and 2, equipment for zone 1 suits zone 2; at second hand',
  ],
  facts: [],
  fixes: [],
  check: {
    point: (view) => {
      const { space, heater } = view;
      if (space === undefined) return [];
      return installedModels(view).flatMap(({ words, id, file, keyOrigin, model, named }) => {
        const heated = heater.on && words === 'humidity probe' ? ' A heated head is a hot surface as well.' : '';
        return uncertifiedZones(model.value, space.located.value).map(({ value, origin }) => ({
          message: () =>
            `The space is ${value.replace('flammable-zone-', 'flammable zone ')}, and the model ${id} of the ${words} is not certified for it.${heated} Local codes and licensed practice decide what may be installed.`,
          origin: named.origin,
          related: () => [
            { message: `The space has ${value}.`, origin },
            { message: 'What the model is certified for.', origin: model.value.zones?.origin ?? keyOrigin, file },
          ],
        }));
      });
    },
  },
};
