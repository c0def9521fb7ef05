/** One space: its envelopes, what they make of every quantity, its chart, its wall, its cautions. */
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import { cautionsFor } from '../evaluate/cautions.ts';
import type { SpaceEvaluation } from '../evaluate/space.ts';
import { factsOfSpace } from '../features/subject-facts.ts';
import { chartPlane, moistAirChart } from '../pictures/moist-air-chart.ts';
import {
  type Block,
  factWithCorner,
  listed,
  named,
  type Section,
  stated,
  type Text,
  table,
  told,
  words,
} from './document.ts';

export function spaceSection(space: SpaceEvaluation, site: SiteEvaluation): Section {
  const { id, located } = space;
  const { title, pressure, gradient, wall, exposure, hazards } = located.value;
  const facts = factsOfSpace(space);
  return {
    title: ['Space ', words(title?.value ?? id)],
    startsPage: true,
    blocks: [
      ...table(
        'As stated',
        ['', ''],
        [
          [['Name in the files'], [words(id)]],
          [['Pressure'], pressure === undefined ? ['from the altitude of the site, ISO 2533'] : stated(pressure)],
          [['Variation of the air temperature across it'], stated(gradient)],
          [
            ['Wall'],
            listed(
              named('', wall?.value.thickness),
              named('of', wall?.value.material),
              named('insulation', wall?.value.insulation),
              named('of', wall?.value.insulationMaterial),
            ),
          ],
          [['What attacks equipment'], listed(...(exposure?.value ?? []).map((item) => stated(item)))],
          [['What can hurt people'], listed(...(hazards?.value ?? []).map((item) => stated(item)))],
        ],
      ),
      ...cautionBlock(space),
      ...envelopeTable(space),
      ...chart(space, site),
      ...table(
        'What follows from it',
        ['number', 'value'],
        facts.map((fact): readonly Text[] => [[told(fact.title)], factWithCorner(id, fact)]),
      ),
    ],
  };
}

function cautionBlock({ located }: SpaceEvaluation): readonly Block[] {
  const lines = cautionsFor((located.value.hazards?.value ?? []).map(({ value }) => value));
  return lines.length === 0 ? [] : [{ kind: 'caution', lines: lines.map((line): Text => [told(line)]) }];
}

function envelopeTable({ phases }: SpaceEvaluation): readonly Block[] {
  return table(
    'The states of the air, phase by phase',
    ['phase', 'air temperature', 'humidity', 'air speed', 'fastest change'],
    phases.map(({ envelope: { phase, located, temperature, humidityKey, humidity, speed } }) => [
      [words(phase ?? 'air')],
      stated(temperature),
      humidityKey === 'humidity' ? stated(humidity) : [`${humidityKey.replaceAll('-', ' ')} `, ...stated(humidity)],
      stated(speed),
      stated(located.value.ramp),
    ]),
  );
}

/** A pack names no places: it leaves the machine. */
const NOWHERE = { file: '', start: 0 };

function chart(space: SpaceEvaluation, { points }: SiteEvaluation): readonly Block[] {
  const subject = {
    space,
    points: [...points.values()].filter((point) => point.space === space),
    phases: space.phases.filter(({ sampled }) => sampled !== undefined),
    here: undefined,
    placeOf: () => NOWHERE,
  };
  const plane = chartPlane('mixing-ratio', subject);
  if (plane === undefined) return [];
  return [
    {
      kind: 'picture',
      drawing: moistAirChart(plane, subject),
      caption: 'Moist-air chart of the space: envelopes, sensors, limits and checks.',
    },
  ];
}
