/** What the job is: where the site stands, its points at a glance, and the equipment that it uses. */
import type { Analysis } from '../analysis/analysis.ts';
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import { cautionsFor } from '../evaluate/cautions.ts';
import type { ModelRef } from '../evaluate/equipment/models.ts';
import { countsInWords } from '../features/support/finding-counts.ts';
import { usedModels } from '../features/support/used-models.ts';
import type { Located } from '../model/located.ts';
import type { HumidityProbeModel, TemperatureProbeModel, TransmitterModel } from '../model/model-types.generated.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import {
  type Block,
  listed,
  named,
  nameTable,
  type Section,
  stated,
  type Text,
  table,
  told,
  words,
} from './document.ts';
import { spaceName } from './space-section.ts';

export function siteBlocks(
  { findings, accepted }: Analysis,
  { settings, spaces, points }: SiteEvaluation,
): readonly Block[] {
  const { header } = settings;
  const open = findings.length === 0 ? 'nothing is open' : `open: ${countsInWords(findings)}`;
  return [
    ...nameTable('The site', [
      ['Name in the files', stated(header?.id)],
      ['Altitude', stated(header?.altitude)],
      ['Air around cabinets and walls', stated(header?.surroundings)],
      ['Kits', listed(...(header?.kits?.value ?? []).map((kit) => stated(kit)))],
      ['State of the file', [told(`${open}; accepted with a reason: ${accepted.length}`)]],
    ]),
    ...table(
      'Its points',
      ['point', 'what it is', 'space', 'reports'],
      [...points.values()].map((point) => [
        [words(point.tag)],
        stated(point.point.title),
        spaceName(point),
        listed(...point.reports.map(({ quantity }): Text => [quantityInfo(quantity).title])),
      ]),
    ),
    { kind: 'caution', lines: cautionLines(spaces) },
  ];
}

/** Of a site whose spaces name no hazard, that nobody should conclude that there is none. */
function cautionLines(spaces: SiteEvaluation['spaces']): readonly Text[] {
  const hazards = [...spaces.values()].flatMap(({ located }) =>
    (located.value.hazards?.value ?? []).map(({ value }) => value),
  );
  const [first, ...others] = cautionsFor(hazards);
  if (first === undefined) {
    const noDevice = 'Local codes and licensed practice decide; Dewright is no safety device.';
    return [['The file names no hazard, which does not mean that there is none.'], [noDevice]];
  }
  return [[told(first)], ...others.map((line): Text => [told(line)])];
}

export function equipmentSection({ points, catalogue }: SiteEvaluation): Section {
  const used = usedModels(points.values());
  const rowsOf = <Model extends { readonly title?: Located<string> }>(
    kind: string,
    models: ReadonlyMap<string, ModelRef<Model>>,
    figures: (model: Model) => Text,
  ): readonly (readonly Text[])[] =>
    [...models.values()].flatMap(({ id, model }) =>
      model === undefined || !used.has(id)
        ? []
        : [[[words(id)], [kind], stated(model.value.title), figures(model.value)]],
    );
  return {
    title: ['Equipment'],
    blocks: table(
      'The models that the points use, with the figures of the kits that all numbers here rest on',
      ['model', 'kind', 'what it is', 'figures of the data sheet'],
      [
        ...rowsOf('humidity probe', catalogue.humidityProbes, humidityProbeFigures),
        ...rowsOf('air-temperature probe', catalogue.temperatureProbes, temperatureProbeFigures),
        ...rowsOf('transmitter', catalogue.transmitters, transmitterFigures),
        ...rowsOf('receiver', catalogue.receivers, ({ input, bits, accuracy }) =>
          listed(named('input', input), named('bits', bits), named('accuracy', accuracy)),
        ),
      ],
    ),
  };
}

function humidityProbeFigures(model: HumidityProbeModel): Text {
  const { ranges, headTemperature, drift, response, heater, supply } = model;
  return listed(
    named('temperature', ranges?.value.temperature),
    named('pressure', ranges?.value.pressure),
    ...(model.accuracy?.value ?? []).map(
      ({ value }): Text => [
        ...named('accuracy', value.relativeHumidity),
        ...(value.when === undefined ? [] : [' at ', ...stated(value.when)]),
      ],
    ),
    named('temperature of its sensor', headTemperature),
    named('drift', drift),
    named('response', response),
    named('heater', heater?.value.power),
    named('heater from', heater?.value.minimumVoltage),
    named('rise up to', heater?.value.maximumRise),
    named('supply', supply?.value.voltage),
  );
}

function temperatureProbeFigures({ ranges, accuracy, drift, response, stem }: TemperatureProbeModel): Text {
  const grade = accuracy !== undefined && 'class' in accuracy.value ? accuracy.value.class : undefined;
  return listed(
    named('temperature', ranges?.value.temperature),
    grade === undefined ? named('accuracy', accuracy) : named('IEC class', grade),
    named('drift', drift),
    named('response', response),
    named('stem', stem?.value.diameter),
  );
}

function transmitterFigures({ supply, loopMinimumVoltage, outputAccuracy }: TransmitterModel): Text {
  return listed(
    named('supply', supply?.value.voltage),
    named('power', supply?.value.power),
    named('least loop voltage', loopMinimumVoltage),
    named('accuracy of the outputs', outputAccuracy),
  );
}
