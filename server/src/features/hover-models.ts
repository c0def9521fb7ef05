/** What the data sheet in the kit says of the model under the cursor. */
import type { Analysis } from '../analysis/analysis.ts';
import { relativeName } from '../analysis/file-location.ts';
import type { Located } from '../model/located.ts';
import { showQuantity, showRange } from '../quantity/format-quantity.ts';
import type { QuantityRange } from '../quantity/quantity.ts';
import type { Location } from '../syntax/locate.ts';
import { escapeMarkdown } from './markdown.ts';

export function modelSummary({ content, file }: Analysis, location: Location): readonly string[] {
  if (content.kind !== 'site' || location.path[0] !== 'points' || location.path.at(-1) !== 'model') return [];
  const point = content.site.points.get(location.path[1] ?? '');
  const section = location.path[2];
  if (section === 'humidity-probe') {
    const ref = point?.humidityProbeModel;
    const model = ref?.model?.value;
    if (ref === undefined || model === undefined) return [];
    const { ranges, heater, supply } = model;
    return lines(ref.id, model.title?.value, relativeName(file, ref.file), [
      range('relative humidity', ranges?.value.relativeHumidity),
      range('temperature', ranges?.value.temperature),
      range('pressure', ranges?.value.pressure),
      heater === undefined
        ? 'no heater'
        : `heater ${heater.value.power === undefined ? '' : showQuantity(heater.value.power.value.value, 'power')}${heater.value.maximumRise === undefined ? '' : `, up to ${showQuantity(heater.value.maximumRise.value.value, 'temperature-difference')} above the air`}`,
      range('supply', supply?.value.voltage),
    ]);
  }
  if (section === 'air-temperature-probe') {
    const ref = point?.airTemperatureProbeModel;
    const model = ref?.model?.value;
    if (ref === undefined || model === undefined) return [];
    const accuracy = model.accuracy?.value;
    const grade = accuracy !== undefined && 'class' in accuracy ? accuracy.class?.value : undefined;
    return lines(ref.id, model.title?.value, relativeName(file, ref.file), [
      range('temperature', model.ranges?.value.temperature),
      grade === undefined ? undefined : `IEC 60751 class ${grade}`,
    ]);
  }
  return [];
}

function range(label: string, of: Located<QuantityRange> | undefined): string | undefined {
  return of === undefined ? undefined : `${label} ${showRange(of.value.low, of.value.high, of.value.dimension)}`;
}

function lines(
  id: string,
  title: string | undefined,
  kit: string,
  facts: readonly (string | undefined)[],
): readonly string[] {
  const known = facts.filter((fact) => fact !== undefined);
  const heading = `**${escapeMarkdown(title ?? id)}** (${escapeMarkdown(kit)})`;
  return [`${heading}\n${known.map((fact) => `- ${escapeMarkdown(fact)}`).join('\n')}`];
}
