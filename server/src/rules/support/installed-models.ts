/** The models that a point installs in its space, and where the point names them. */
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { Located } from '../../model/located.ts';
import type { HumidityProbeModel, TemperatureProbeModel } from '../../model/model-types.generated.ts';
import type { Origin } from '../../syntax/nodes.ts';

export interface InstalledModel {
  /** As messages call it: 'humidity probe'. */
  readonly words: string;
  readonly id: string;
  readonly file: string;
  readonly keyOrigin: Origin;
  readonly model: Located<HumidityProbeModel | TemperatureProbeModel>;
  /** Where the point names it. */
  readonly named: Located<string>;
}

/** Transmitters are left out: they hang outside the space. */
export function installedModels({
  point,
  humidityProbeModel,
  airTemperatureProbeModel,
}: PointEvaluation): readonly InstalledModel[] {
  const probes = [
    { words: 'humidity probe', ref: humidityProbeModel, named: point.humidityProbe?.value.model },
    { words: 'air-temperature probe', ref: airTemperatureProbeModel, named: point.airTemperatureProbe?.value.model },
  ];
  return probes.flatMap(({ words, ref, named }) => {
    if (ref?.model === undefined || named === undefined) return [];
    const { id, file, keyOrigin, model } = ref;
    return [{ words, id, file, keyOrigin, model, named }];
  });
}
