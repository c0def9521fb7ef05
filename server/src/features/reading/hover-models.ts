/** What the data sheet in the kit says of the model under the cursor. */
import type { Analysis } from '../../analysis/analysis.ts';
import { relativeName } from '../../analysis/file-location.ts';
import type { ModelRef } from '../../evaluate/equipment/models.ts';
import type { Located } from '../../model/located.ts';
import type { HeaterModel, HumidityProbeModel, TemperatureProbeModel } from '../../model/model-types.generated.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { QuantityRange } from '../../quantity/quantity.ts';
import type { Location } from '../../syntax/locate.ts';
import { escapeMarkdown } from '../support/markdown.ts';

export function modelSummary({ content, file }: Analysis, location: Location): readonly string[] {
  if (content.kind !== 'site' || location.path[0] !== 'points' || location.path.at(-1) !== 'model') return [];
  const point = content.site.points.get(location.path[1] ?? '');
  switch (location.path[2]) {
    case 'humidity-probe':
      return summaryOf(file, point?.humidityProbeModel, humidityProbeFigures);
    case 'air-temperature-probe':
      return summaryOf(file, point?.airTemperatureProbeModel, temperatureProbeFigures);
    default:
      return [];
  }
}

function humidityProbeFigures({ ranges, heater, supply }: HumidityProbeModel): Figures {
  return [
    range('relative humidity', ranges?.value.relativeHumidity),
    range('temperature', ranges?.value.temperature),
    range('pressure', ranges?.value.pressure),
    heater === undefined ? 'no heater' : heaterWords(heater.value),
    range('supply', supply?.value.voltage),
  ];
}

function heaterWords({ power, maximumRise }: HeaterModel): string {
  const rise = maximumRise && showQuantity(maximumRise.value.value, 'temperature-difference');
  const told = [power && showQuantity(power.value.value, 'power'), rise && `up to ${rise} above the air`];
  return `heater ${told.filter((words) => words !== undefined).join(', ')}`.trim();
}

function temperatureProbeFigures({ ranges, accuracy }: TemperatureProbeModel): Figures {
  const grade = accuracy !== undefined && 'class' in accuracy.value ? accuracy.value.class?.value : undefined;
  return [range('temperature', ranges?.value.temperature), grade && `IEC 60751 class ${grade}`];
}

function range(label: string, of: Located<QuantityRange> | undefined): string | undefined {
  return of === undefined ? undefined : `${label} ${showRange(of.value.low, of.value.high, of.value.dimension)}`;
}

type Figures = readonly (string | undefined)[];

function summaryOf<Model extends { readonly title?: Located<string> }>(
  file: string,
  ref: ModelRef<Model> | undefined,
  figuresOf: (model: Model) => Figures,
): readonly string[] {
  const model = ref?.model?.value;
  if (ref === undefined || model === undefined) return [];
  const heading = `**${escapeMarkdown(model.title?.value ?? ref.id)}** (${escapeMarkdown(relativeName(file, ref.file))})`;
  const figures = figuresOf(model).flatMap((figure) => (figure === undefined ? [] : [`- ${escapeMarkdown(figure)}`]));
  return [[heading, ...figures].join('\n')];
}
