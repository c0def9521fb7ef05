/** Models of the kits: those that suit the space come first with their margin, the others last with the reason. */

import { humidityAtSensor } from '../../../evaluate/dryness/dryness.ts';
import { unheatedHumidityLimit } from '../../../evaluate/dryness/limits.ts';
import { humidityProbeFit, type ModelFit, temperatureProbeFit } from '../../../evaluate/equipment/model-fit.ts';
import type { ModelRef, Models } from '../../../evaluate/equipment/models.ts';
import { broken } from '../../../evaluate/facts/limit.ts';
import type { Located } from '../../../model/located.ts';
import { showQuantity } from '../../../quantity/format-quantity.ts';
import type { ModelKind } from '../../moving/names.ts';
import { type CompletionItem, withDetail } from './completion-item.ts';
import type { CompletionContext } from './context.ts';

export function modelItems(context: CompletionContext, kind: ModelKind): readonly CompletionItem[] {
  const { content } = context.analysis;
  if (content.kind !== 'site') return [];
  const { catalogue } = content.site;
  switch (kind) {
    case 'humidity-probe-model':
      return fittingFirst(catalogue.humidityProbes, (model) => humidityFit(context, model));
    case 'temperature-probe-model':
      return fittingFirst(catalogue.temperatureProbes, (model) =>
        context.space?.complete === true ? temperatureProbeFit(model, context.space) : undefined,
      );
    case 'transmitter-model':
      return fittingFirst(catalogue.transmitters, () => undefined);
    case 'receiver-model':
      return fittingFirst(catalogue.receivers, () => undefined);
  }
}

function humidityFit(
  { space, point }: CompletionContext,
  model: Parameters<typeof humidityProbeFit>[0],
): ModelFit | undefined {
  if (space?.complete !== true) return undefined;
  const isWet = point !== undefined && broken(unheatedHumidityLimit, point) !== undefined;
  const rise = point?.heater.rise?.value.value ?? 0;
  const highestHumidity = point?.facts.get(humidityAtSensor)?.value;
  return humidityProbeFit(model, space, { heater: isWet || point?.heater.on === true, rise, highestHumidity });
}

interface Titled {
  readonly title?: Located<string>;
}

function fittingFirst<Model extends Titled>(
  models: Models<Model>,
  fitOf: (model: Model) => ModelFit | undefined,
): readonly CompletionItem[] {
  const offers = [...models.values()].map((ref) => ({ ref, fit: ref.model && fitOf(ref.model.value) }));
  const suits = offers.filter(({ fit }) => fit === undefined || fit.objections.length === 0);
  const others = offers.filter(({ fit }) => fit !== undefined && fit.objections.length > 0);
  return [...suits, ...others].map(({ ref, fit }) => modelItem(ref, fit));
}

function modelItem<Model extends Titled>({ id, model }: ModelRef<Model>, fit: ModelFit | undefined): CompletionItem {
  const title = model?.value.title?.value;
  return {
    label: id,
    kind: 'model',
    insert: [id],
    ...withDetail((fit && fitWords(fit)) ?? title),
    documentation: title ?? '',
  };
}

function fitWords({ temperatureMargin, objections }: ModelFit): string | undefined {
  if (objections.length > 0) return `no: ${objections.join('; ')}`;
  if (temperatureMargin === undefined) return undefined;
  return `suits, ${showQuantity(temperatureMargin, 'temperature-difference')} to spare`;
}
