/** Everything that is computed for one point: facts by their id, and how its reports get their air temperature. */
import type { Located } from '../model/located.ts';
import type {
  HumidityProbeModel,
  Point,
  Report,
  TemperatureProbeModel,
  TransmitterModel,
} from '../model/model-types.generated.ts';
import type { Entry } from '../model/read-file.ts';
import { isQuantityName, type QuantityName } from '../quantity/quantity-names.ts';
import { type Assessment, assess } from './assessment.ts';
import { drynessFacts } from './dryness/dryness.ts';
import type { ModelCatalogue, ModelRef } from './equipment/models.ts';
import type { Fact } from './facts/fact.ts';
import type { SiteSettings } from './facts/site-settings.ts';
import { installationFacts } from './installation-facts.ts';
import { reportFacts } from './report-facts.ts';
import { type OtherPoint, type ResolvedSource, resolveSource } from './resolved/air-temperature-source.ts';
import { type HeaterUse, heaterUse } from './resolved/heater.ts';
import type { VisitReading } from './resolved/visit-reading.ts';
import { frostPointFacts } from './signals/frost-point.ts';
import type { SpaceEvaluation } from './space.ts';

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

/** A point with its models, its heater and its sources resolved: what the facts are computed from. */
export interface ResolvedPoint extends PointInputs {
  readonly point: Point;
  readonly humidityProbeModel: ModelRef<HumidityProbeModel> | undefined;
  readonly airTemperatureProbeModel: ModelRef<TemperatureProbeModel> | undefined;
  readonly transmitterModel: ModelRef<TransmitterModel> | undefined;
  readonly heater: HeaterUse;
  readonly reports: readonly ReportEvaluation[];
}

export interface PointEvaluation extends ResolvedPoint, Assessment {
  readonly facts: ReadonlyMap<string, Fact>;
}

export function evaluatePoint(inputs: PointInputs): PointEvaluation {
  const resolved = resolvePoint(inputs);
  const space = resolved.space?.complete === true ? resolved.space : undefined;
  const { assessment, facts: assessed } = assess(resolved, space);
  const facts = [
    ...(space === undefined ? [] : factsOf(resolved, space)),
    ...installationFacts(resolved, space),
    ...assessed,
  ];
  return { ...resolved, ...assessment, facts: new Map(facts.map((fact) => [fact.id, fact])) };
}

function resolvePoint(inputs: PointInputs): ResolvedPoint {
  const { entry, catalogue, otherPoints } = inputs;
  const point = entry.located?.value ?? {};
  const probe = point.humidityProbe?.value;
  const heater = heaterUse(point.humidityProbe);
  const modelOf = <Model>(models: ReadonlyMap<string, ModelRef<Model>>, id: string | undefined) =>
    id === undefined ? undefined : models.get(id);
  const other = (tag: string): OtherPoint => otherPoints.get(tag) ?? { tag, entry: undefined, space: undefined };
  return {
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
  };
}

/** The facts of a point, each topic from its own module. */
function factsOf(resolved: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  return [...drynessFacts(resolved, space), ...reportFacts(resolved, space), ...frostPointFacts(resolved, space)];
}
