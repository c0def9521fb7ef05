/** The temperature along the stem of each probe of a point at one state of the air, with the coldest surroundings. */
import { fail, succeed } from '../../base/outcome.ts';
import { stemCelsius } from '../../physics/heat/stem-temperatures.ts';
import { wallTemperatures } from '../../physics/heat/wall.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { Corner } from '../facts/fact.ts';
import { type Given, given } from '../facts/given.ts';
import { sensorWarming } from '../resolved/heater.ts';
import { type MountedStem, mountedStem } from '../resolved/mounted-stem.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { fittingLayers, spaceWall, surroundingsOf, wallConditions } from './space-wall.ts';
import { stemFilm } from './stem-error.ts';

export type StemName = 'humidity-probe' | 'air-temperature-probe';

export interface StemProfile {
  /** From the inner surface of the wall to the tip, or to the heated head, m. */
  readonly length: number;
  /** °C at a distance in m from the inner surface of the wall. */
  readonly celsiusAt: (distance: number) => number;
  /** °C; undefined without a heated head. */
  readonly headCelsius: number | undefined;
}

/** At the least air speed of the phase, as everything that is told of the wall. */
export function stemProfile(
  point: ResolvedPoint,
  space: SpaceEvaluation,
  name: StemName,
  { airCelsius, pressure, phase: phaseName }: Corner,
): Given<StemProfile> {
  const mounted = stemNamed(point, name);
  if (!mounted.ok) return mounted;
  const wall = spaceWall(space);
  if (!wall.ok) return wall;
  const surroundings = surroundingsOf(space.settings);
  if (!surroundings.ok) return surroundings;
  const phase = given(space.phases.find(({ envelope }) => envelope.phase === phaseName)?.envelope, 'no such phase');
  if (!phase.ok) return phase;
  const speed = given(phase.value.speed?.value.low, 'no air speed is given');
  if (!speed.ok) return speed;
  const headCelsius = name === 'humidity-probe' ? headTemperature(point, airCelsius) : succeed(undefined);
  if (!headCelsius.ok) return headCelsius;
  const { stem, insertion, insulation } = mounted.value;
  const layers = fittingLayers(wall.value, insulation);
  const conditions = wallConditions(phase.value, airCelsius, surroundings.value.low);
  const around = {
    length: headCelsius.value === undefined ? insertion : Math.max(0, insertion - headLength(point)),
    film: stemFilm(mounted.value, speed.value, { airCelsius, pressure }),
    airCelsius,
    wallCelsius: wallTemperatures(layers, conditions).insideSurfaceCelsius,
    headCelsius: headCelsius.value,
  };
  return succeed({
    length: around.length,
    celsiusAt: (distance) => stemCelsius(stem, around, distance),
    headCelsius: headCelsius.value,
  });
}

function stemNamed(point: ResolvedPoint, name: StemName): Given<MountedStem> {
  const { humidityProbe, airTemperatureProbe } = point.point;
  const attitude = humidityProbe?.value.mounting?.value.attitude;
  return name === 'humidity-probe'
    ? mountedStem(point.humidityProbeModel, humidityProbe?.value.mounting, attitude)
    : mountedStem(point.airTemperatureProbeModel, airTemperatureProbe?.value.mounting, attitude);
}

/** Of a heated head, as far above the air as is asked of it; undefined for one that is not heated. */
function headTemperature({ heater }: ResolvedPoint, airCelsius: number): Given<number | undefined> {
  const warming = sensorWarming(heater);
  if (warming === undefined) return fail('the rise of the heater is not known');
  return succeed(heater.on ? airCelsius + warming.rise : undefined);
}

/** m; a head of which the kit says nothing is taken as the tip alone. */
function headLength({ humidityProbeModel }: ResolvedPoint): number {
  return Math.max(0, humidityProbeModel?.model?.value.head?.value.length?.value.value ?? 0);
}
