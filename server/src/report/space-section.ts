/** One space: its envelopes, what they make of every quantity, its chart, its wall, its cautions. */
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import { cautionsFor } from '../evaluate/cautions.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { factsOfSpace } from '../features/support/subject-facts.ts';
import type { Located } from '../model/located.ts';
import { chartPlane, moistAirChart } from '../pictures/chart/moist-air-chart.ts';
import { isQuantityName, quantityInfo } from '../quantity/quantities.ts';
import {
  type Block,
  factWithCorner,
  listed,
  nameTable,
  type Section,
  stated,
  statedWord,
  type Text,
  table,
  told,
  words,
} from './document.ts';

export function spaceSection(space: SpaceEvaluation, site: SiteEvaluation): Section {
  const { id, located } = space;
  const { pressure, gradient, wall, exposure, hazards } = located.value;
  const facts = factsOfSpace(space);
  return {
    title: ['Space ', words(titleOf(space))],
    startsPage: true,
    blocks: [
      ...nameTable('As stated', [
        ['Name in the files', [words(id)]],
        ['Pressure', pressure === undefined ? ['from the altitude of the site'] : stated(pressure)],
        ['Variation of the air temperature across it', stated(gradient)],
        ['Wall', layer(wall?.value.thickness, wall?.value.material)],
        ['Its insulation', layer(wall?.value.insulation, wall?.value.insulationMaterial)],
        ['What attacks equipment', listed(...(exposure?.value ?? []).map((item) => stated(item)))],
        ['What can hurt people', listed(...(hazards?.value ?? []).map((item) => stated(item)))],
      ]),
      ...cautionBlock(space),
      ...envelopeTable(space),
      ...chart(space, site),
      ...rangeTable(id, facts),
      ...table(
        'What else follows',
        ['number', 'value'],
        facts
          .filter((fact) => !RANGE.test(fact.id))
          .map((fact): readonly Text[] => [[told(fact.title)], factWithCorner(id, fact)]),
      ),
    ],
  };
}

/** By its title where it has one; of a point without a space that is known, as its file has it. */
export function spaceName({ space, point }: PointEvaluation): Text {
  return space === undefined ? stated(point.space) : [words(titleOf(space))];
}

function titleOf({ id, located }: SpaceEvaluation): string {
  return located.value.title?.value ?? id;
}

const RANGE = /^(.*)\/(lowest|highest)$/;

/** What the envelopes make of every quantity. */
function rangeTable(id: string, facts: readonly Fact[]): readonly Block[] {
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  const quantities = new Set(facts.flatMap((fact) => RANGE.exec(fact.id)?.[1] ?? []));
  return table(
    'What follows for the air',
    ['quantity', 'lowest', 'highest'],
    [...quantities].map((quantity): readonly Text[] => [
      [isQuantityName(quantity) ? quantityInfo(quantity).title : quantity],
      factWithCorner(id, byId.get(`${quantity}/lowest`)),
      factWithCorner(id, byId.get(`${quantity}/highest`)),
    ]),
  );
}

function layer(thickness: Located<unknown> | undefined, material: Located<string> | undefined): Text {
  if (thickness === undefined) return [];
  return material === undefined ? stated(thickness) : [...stated(thickness), ' of ', ...statedWord(material)];
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
      humidityKey === 'humidity' ? stated(humidity) : [`${quantityInfo(humidityKey).title} `, ...stated(humidity)],
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
    recordings: [],
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
