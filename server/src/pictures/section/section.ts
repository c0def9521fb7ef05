/**
 * What a section through the wall and the probes of a point shows: its lengths from the file, its temperatures from
 * the facts and from the stems at the corner where the fitting is closest to the dew point.
 */

import { fail, succeed } from '../../base/outcome.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import type { Facts } from '../../evaluate/facts/declared-fact.ts';
import { type Corner, isKnown, type KnownFact } from '../../evaluate/facts/fact.ts';
import { type Given, given, positive } from '../../evaluate/facts/given.ts';
import { held, type Limit } from '../../evaluate/facts/limit.ts';
import { fittingSurface } from '../../evaluate/mounting/fitting-facts.ts';
import { fittingStaysDry, wallStaysDry } from '../../evaluate/mounting/limits.ts';
import { spaceWall, surroundingsOf } from '../../evaluate/mounting/space-wall.ts';
import { type StemName, type StemProfile, stemProfile } from '../../evaluate/mounting/stem-profile.ts';
import type { SurfaceFacts } from '../../evaluate/mounting/surface-facts.ts';
import { wallSurface } from '../../evaluate/mounting/wall-facts.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { inSampleLine } from '../../evaluate/resolved/mounted-stem.ts';
import type { ResolvedPoint } from '../../evaluate/resolved/resolved-point.ts';
import type { Located } from '../../model/located.ts';
import type {
  AirTemperatureProbeMounting,
  Head,
  HumidityProbeMounting,
  Wall,
} from '../../model/model-types.generated.ts';
import { MATERIALS } from '../../physics/heat/materials.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';

type Attitude = 'horizontal' | 'head-up' | 'head-down';
export type Position = NonNullable<AirTemperatureProbeMounting['position']>['value'];

/** Lengths in m, temperatures in °C. */
export interface Section {
  readonly attitude: Attitude;
  /** From inside to outside; none where the space gives no wall. */
  readonly layers: readonly SectionLayer[];
  readonly wallOrigin: Origin | undefined;
  readonly humidityProbe: SectionProbe;
  readonly airTemperatureProbe: BesideProbe | undefined;
  /** The least and the highest of all phases, in words. */
  readonly airSpeed: string | undefined;
  readonly surroundingsCelsius: number | undefined;
  readonly wall: SectionSurface | undefined;
  readonly fitting: SectionSurface | undefined;
  /** Where the temperatures of the stems are those of. */
  readonly at: Corner | undefined;
  /** What could not be drawn or computed, and why. */
  readonly notes: readonly string[];
}

export interface SectionLayer {
  readonly thickness: number;
  readonly title: string;
  readonly isInsulation: boolean;
}

export interface SectionProbe {
  readonly title: string;
  readonly model: string | undefined;
  readonly origin: Origin;
  readonly insertion: number;
  /** Of the fitting. */
  readonly insulation: number;
  readonly diameter: number | undefined;
  readonly head: { readonly diameter: number; readonly length: number; readonly heated: boolean } | undefined;
  readonly profile: StemProfile | undefined;
}

export interface BesideProbe extends SectionProbe {
  readonly position: Position | undefined;
  /** Between the tips. */
  readonly spacing: number;
  /** Between the stems, where they leave the wall. */
  readonly apart: number;
}

/** An inner surface where it is closest to the dew point. */
export interface SectionSurface {
  readonly temperature: KnownFact;
  /** K above the dew point. */
  readonly margin: KnownFact;
  /** Below the dew point. */
  readonly isWet: boolean;
}

export function sectionOf(point: PointEvaluation): Given<Section> {
  const probe = point.point.humidityProbe;
  const mounting = probe?.value.mounting;
  if (probe === undefined) return fail('the point has no humidity probe');
  if (inSampleLine(mounting?.value)) return fail('the probe sits in a sample line');
  const insertion = positive(mounting?.value.insertion, 'no insertion of the humidity probe is given');
  if (!insertion.ok) return insertion;
  const { space } = point;
  const fitting = surfaceOf<ResolvedPoint>(point, fittingSurface, fittingStaysDry);
  const at = fitting?.margin.at;
  const stem = stemAt(point, 'humidity-probe', at);
  const head = point.humidityProbeModel?.model?.value.head?.value;
  const beside = airTemperatureProbeOf(point, insertion.value, stemAt(point, 'air-temperature-probe', at));
  const surroundings = surroundingsOf(point.settings);
  return succeed({
    attitude: mounting?.value.attitude?.value ?? 'horizontal',
    layers: layersOf(space?.located.value.wall?.value),
    wallOrigin: space?.located.value.wall?.origin,
    humidityProbe: {
      ...probeBase(mounting, insertion.value),
      title: 'humidity probe',
      model: probe.value.model?.value,
      origin: probe.origin,
      diameter: point.humidityProbeModel?.model?.value.stem?.value.diameter?.value.value,
      head: headOf(head, insertion.value, point.heater.on),
      profile: stem.ok ? stem.value : undefined,
    },
    airTemperatureProbe: beside.ok ? beside.value : undefined,
    airSpeed: airSpeedOf(space),
    surroundingsCelsius: surroundings.ok ? surroundings.value.low : undefined,
    wall: space === undefined ? undefined : surfaceOf(space, wallSurface, wallStaysDry),
    fitting,
    at,
    notes: [
      ...(mounting?.value.attitude === undefined ? ['The attitude is not given: drawn as horizontal.'] : []),
      ...(stem.ok ? [] : [`No temperatures along the stem: ${stem.problem}.`]),
      ...(beside.ok || beside.problem === NO_PROBE
        ? []
        : [`The air-temperature probe is left out: ${beside.problem}.`]),
    ],
  });
}

function probeBase(
  mounting: Located<HumidityProbeMounting | AirTemperatureProbeMounting> | undefined,
  insertion: number,
) {
  return { insertion, insulation: Math.max(0, mounting?.value.insulation?.value.value ?? 0) };
}

function stemAt(point: PointEvaluation, name: StemName, at: Corner | undefined): Given<StemProfile> {
  const { space } = point;
  return space === undefined || at === undefined ? fail(whyNoFitting(point)) : stemProfile(point, space, name, at);
}

function whyNoFitting({ space, settings }: PointEvaluation): string {
  if (space?.complete !== true) return 'the air of the space is not known';
  const [wall, surroundings] = [spaceWall(space), surroundingsOf(settings)];
  if (!wall.ok) return wall.problem;
  return surroundings.ok ? 'the temperature of the fitting is not known' : surroundings.problem;
}

const NO_PROBE = 'the point has none';

function airTemperatureProbeOf(
  point: PointEvaluation,
  insertionBeside: number,
  profile: Given<StemProfile>,
): Given<BesideProbe> {
  const probe = given(point.point.airTemperatureProbe, NO_PROBE);
  if (!probe.ok) return probe;
  const { mounting, model } = probe.value.value;
  const insertion = positive(mounting?.value.insertion, 'no insertion is given');
  if (!insertion.ok) return insertion;
  const spacing = positive(mounting?.value.spacing, 'no spacing is given');
  if (!spacing.ok) return spacing;
  const tipsAlong = Math.abs(insertion.value - insertionBeside);
  const { value: between } = spacing;
  if (tipsAlong > between) return fail('with these insertions the tips are further apart than the spacing');
  return succeed({
    ...probeBase(mounting, insertion.value),
    title: 'air-temperature probe',
    model: model?.value,
    origin: probe.value.origin,
    diameter: point.airTemperatureProbeModel?.model?.value.stem?.value.diameter?.value.value,
    head: undefined,
    profile: profile.ok ? profile.value : undefined,
    spacing: between,
    apart: Math.sqrt(between ** 2 - tipsAlong ** 2),
    position: mounting?.value.position?.value,
  });
}

function surfaceOf<Subject extends { readonly facts: Facts<Subject> }>(
  subject: Subject,
  surface: SurfaceFacts<Subject>,
  staysDry: Limit<Subject>,
): SectionSurface | undefined {
  const [temperature, dry] = [subject.facts.get(surface.innerSurface), held(staysDry, subject)];
  return isKnown(temperature) && dry !== undefined ? { temperature, margin: dry.fact, isWet: !dry.isKept } : undefined;
}

/** Layers of which both thickness and material are given. */
function layersOf(wall: Wall | undefined): readonly SectionLayer[] {
  const layers = [
    { length: wall?.thickness, material: wall?.material, isInsulation: false },
    { length: wall?.insulation, material: wall?.insulationMaterial, isInsulation: true },
  ];
  return layers.flatMap(({ length, material, isInsulation }) => {
    const thickness = length?.value.value ?? 0;
    if (material === undefined || !(thickness > 0)) return [];
    return [{ thickness, title: MATERIALS[material.value].title, isInsulation }];
  });
}

/** A head is no longer than what is in the air. */
function headOf(head: Head | undefined, insertion: number, heated: boolean): SectionProbe['head'] {
  const [diameter, length] = [head?.diameter?.value.value ?? 0, head?.length?.value.value ?? 0];
  return diameter > 0 && length > 0 ? { diameter, length: Math.min(length, insertion), heated } : undefined;
}

function airSpeedOf(space: SpaceEvaluation | undefined): string | undefined {
  const speeds = (space?.phases ?? []).flatMap(({ envelope }) => envelope.speed?.value ?? []);
  if (speeds.length === 0) return undefined;
  const [low, high] = [Math.min(...speeds.map(({ low }) => low)), Math.max(...speeds.map(({ high }) => high))];
  return showRange(low, high, 'speed');
}
