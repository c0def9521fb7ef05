/** What a report reads its air temperature from: an unheated probe, with its stem and its response. */
import type { Located } from '../../model/located.ts';
import type {
  AirTemperatureProbeMounting,
  HumidityProbeModel,
  HumidityProbeMounting,
  TemperatureProbeModel,
} from '../../model/model-types.generated.ts';
import type { ModelRef } from '../equipment/models.ts';
import type { Given } from '../facts/given.ts';
import type { ResolvedSource } from './air-temperature-source.ts';
import { type MountedStem, mountedStem } from './mounted-stem.ts';
import type { ResolvedPoint } from './resolved-point.ts';

/** The point's air-temperature probe, or the humidity probe's own head while it is not heated. */
export type ThermometerKind = 'air-temperature-probe' | 'own-head';

export interface Thermometer {
  readonly kind: ThermometerKind;
  /** As messages call it: 'air-temperature probe'. */
  readonly title: string;
  readonly model: ModelRef<TemperatureProbeModel | HumidityProbeModel> | undefined;
  readonly mounting: Located<AirTemperatureProbeMounting | HumidityProbeMounting> | undefined;
  readonly stem: Given<MountedStem>;
}

export function thermometerOf(resolved: ResolvedPoint, kind: ThermometerKind): Thermometer {
  const { point, airTemperatureProbeModel, humidityProbeModel } = resolved;
  const humidityMounting = point.humidityProbe?.value.mounting;
  const attitude = humidityMounting?.value.attitude;
  const airMounting = point.airTemperatureProbe?.value.mounting;
  return kind === 'air-temperature-probe'
    ? {
        kind,
        title: 'air-temperature probe',
        model: airTemperatureProbeModel,
        mounting: airMounting,
        stem: mountedStem(airTemperatureProbeModel, airMounting, attitude),
      }
    : {
        kind,
        title: 'humidity probe',
        model: humidityProbeModel,
        mounting: humidityMounting,
        stem: mountedStem(humidityProbeModel, humidityMounting, attitude),
      };
}

/** Undefined where the air temperature comes from elsewhere, from a heated head, or from nowhere. */
export function thermometerKindOf({ kind }: ResolvedSource): ThermometerKind | undefined {
  return kind === 'air-temperature-probe' || kind === 'own-head' ? kind : undefined;
}
