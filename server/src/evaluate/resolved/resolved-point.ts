/** A point with its models, its heater and its sources resolved: what its facts are computed from. */
import type { Located } from '../../model/located.ts';
import type {
  HumidityProbeModel,
  Point,
  Report,
  TemperatureProbeModel,
  TransmitterModel,
} from '../../model/model-types.generated.ts';
import type { Entry } from '../../model/read-file.ts';
import { isQuantityName, type QuantityName } from '../../quantity/quantities.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { ModelCatalogue, ModelRef } from '../equipment/models.ts';
import type { Facts } from '../facts/declared-fact.ts';
import { rememberedFacts } from '../facts/remembered-facts.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { type OtherPoint, type ResolvedSource, resolveSource } from './air-temperature-source.ts';
import { type HeaterUse, heaterUse } from './heater.ts';
import type { VisitReading } from './visit-reading.ts';

/** What the evaluation of one point depends on; where all of it is the same, so is the result. */
export interface PointInputs {
  readonly tag: string;
  readonly entry: Entry<Point>;
  readonly settings: SiteSettings;
  readonly space: SpaceEvaluation | undefined;
  readonly catalogue: ModelCatalogue;
  /** The points whose air-temperature probes this one names, by tag. */
  readonly otherPoints: ReadonlyMap<string, OtherPoint>;
  /** What was read at this point on all visits to the site, the oldest first. */
  readonly readings: readonly VisitReading[];
}

export interface ReportEvaluation {
  readonly quantity: QuantityName;
  readonly report: Located<Report>;
  readonly source: ResolvedSource;
}

export interface ResolvedPoint extends PointInputs {
  readonly point: Point;
  readonly humidityProbeModel: ModelRef<HumidityProbeModel> | undefined;
  readonly airTemperatureProbeModel: ModelRef<TemperatureProbeModel> | undefined;
  readonly transmitterModel: ModelRef<TransmitterModel> | undefined;
  readonly heater: HeaterUse;
  readonly reports: readonly ReportEvaluation[];
  readonly facts: Facts<ResolvedPoint>;
}

/** What a report is allowed to be wrong by. */
export function toleranceOf({ point }: ResolvedPoint, quantity: QuantityName): Located<Quantity> | undefined {
  return point.reports?.value.get(quantity)?.value.tolerance;
}

export function resolvePoint(inputs: PointInputs): ResolvedPoint {
  const { entry, catalogue, otherPoints } = inputs;
  const point = entry.located?.value ?? {};
  const probe = point.humidityProbe?.value;
  const heater = heaterUse(point.humidityProbe);
  const modelOf = <Model>(models: ReadonlyMap<string, ModelRef<Model>>, id: string | undefined) =>
    id === undefined ? undefined : models.get(id);
  const other = (tag: string): OtherPoint => otherPoints.get(tag) ?? { tag, entry: undefined, space: undefined };
  const facts = rememberedFacts(() => resolved);
  const resolved: ResolvedPoint = {
    ...inputs,
    point,
    humidityProbeModel: modelOf(catalogue.humidityProbes, probe?.model?.value),
    airTemperatureProbeModel: modelOf(catalogue.temperatureProbes, point.airTemperatureProbe?.value.model?.value),
    transmitterModel: modelOf(catalogue.transmitters, point.transmitter?.value.model?.value),
    heater,
    reports: [...(point.reports?.value ?? [])].flatMap(([name, report]) =>
      isQuantityName(name)
        ? [{ quantity: name, report, source: resolveSource(name, report, entry, heater, other) }]
        : [],
    ),
    facts,
  };
  return resolved;
}
