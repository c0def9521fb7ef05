import type { FindingDraft, Rule } from './rule.ts';
import { installedModels } from './support/installed-models.ts';

export const rule: Rule = {
  name: 'zone-not-certified',
  group: 'Model limits',
  severity: 'error',
  title: 'A probe stands in a flammable zone that its model is not certified for.',
  why: 'Electric equipment, and a heated head above all, can ignite a flammable atmosphere. Only equipment certified for the zone, its gas group and its temperature class may be installed there.',
  mend: 'Choose a model certified for the zone. Local codes and a licensed practitioner decide, not this check: it knows no gas groups and no temperature classes.',
  leavesAlone: 'Transmitters, which are taken to hang outside the zone.',
  sources: ['IEC 60079-14: equipment for zone 0 suits zones 1 and 2, equipment for zone 1 suits zone 2; from memory'],
  facts: [],
  fixes: [],
  check: {
    point: (view) => {
      const hazards = view.space?.located.value.hazards?.value ?? [];
      return installedModels(view).flatMap(({ words, id, file, keyOrigin, model, named }) =>
        hazards.flatMap((hazard): FindingDraft[] => {
          const zone = zoneOf(hazard.value);
          if (zone === undefined) return [];
          const certified = model.value.zones?.value.map(({ value }) => zoneOf(value)) ?? [];
          if (certified.some((certifiedZone) => certifiedZone !== undefined && certifiedZone <= zone)) return [];
          const heated = view.heater.on && words === 'humidity probe' ? ' A heated head is a hot surface as well.' : '';
          return [
            {
              message: `The space is flammable zone ${zone}, and the model ${id} of the ${words} is not certified for it.${heated} Local codes and licensed practice decide what may be installed.`,
              origin: named.origin,
              related: [
                { message: `The space has ${hazard.value}.`, origin: hazard.origin },
                { message: 'What the model is certified for.', origin: model.value.zones?.origin ?? keyOrigin, file },
              ],
            },
          ];
        }),
      );
    },
  },
};

/** The lower its number, the more often the zone is flammable and the stricter its certificate. */
function zoneOf(hazard: string): number | undefined {
  const match = /^flammable-zone-([012])$/.exec(hazard);
  return match === null ? undefined : Number(match[1]);
}
