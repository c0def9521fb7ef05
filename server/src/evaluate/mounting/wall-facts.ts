/** Facts of a space about its wall: how close its inner surface comes to the dew point, how hot it is outside. */
import { TOUCH_TEMPERATURE, touchCaution } from '../../physics/heat/touch-temperature.ts';
import { WALL_TEMPERATURES, wallTemperatures } from '../../physics/heat/wall.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { temperatureEnds } from '../air/temperature-ends.ts';
import { speedInput } from '../air-temperature/probe-inputs.ts';
import { cornerOf } from '../facts/corner.ts';
import type { Fact, FactInput } from '../facts/fact.ts';
import { isUnread } from '../facts/unread.ts';
import type { SpaceEvaluation } from '../space.ts';
import { type SpaceWall, spaceWall, surroundingsOf, WALL_NOTES, wallConditions, wallLayers } from './space-wall.ts';
import { surfaceFacts } from './surface-facts.ts';

/** None for a space without a wall or a site without surroundings. */
export function wallFacts(space: Pick<SpaceEvaluation, 'located' | 'settings' | 'phases'>): readonly Fact[] {
  const { settings, phases } = space;
  const wall = spaceWall(space);
  const surroundings = surroundingsOf(settings);
  if (!wall.ok || !surroundings.ok) return [];
  const inputs = [...wall.value.inputs, surroundings.value.input];
  return [
    ...surfaceFacts(phases, {
      part: 'wall',
      wall: { layers: wallLayers(wall.value), outsideCelsius: surroundings.value.low },
      present: wall.value.insulation?.thickness ?? 0,
      conductivity: wall.value.insulationConductivity,
      margin: settings.margin.value,
      thickest: Number.POSITIVE_INFINITY,
      inputs,
      notes: WALL_NOTES,
    }),
    ...outerSurface(phases, wall.value, surroundings.value.high, inputs),
  ];
}

/** With the hottest air and surroundings, and the highest air speed. */
function outerSurface(
  phases: readonly PhaseEvaluation[],
  wall: SpaceWall,
  outsideCelsius: number,
  inputs: readonly FactInput[],
): readonly Fact[] {
  let hottest: Fact | undefined;
  for (const phase of phases) {
    const { envelope } = phase;
    const state = temperatureEnds(phase).at(-1);
    if (state === undefined || isUnread(envelope.located, 'speed', envelope.speed)) continue;
    const speed = envelope.speed?.value.high;
    const conditions = wallConditions(envelope, state.airCelsius, outsideCelsius, speed);
    const { outsideSurfaceCelsius } = wallTemperatures(wallLayers(wall), conditions);
    if (hottest?.value !== undefined && hottest.value >= outsideSurfaceCelsius) continue;
    hottest = {
      id: 'wall-outer-surface',
      title: 'hottest outer surface of the wall',
      dimension: 'temperature',
      value: outsideSurfaceCelsius,
      at: cornerOf(state, envelope.phase, speed),
      relation: 't(outside) + (t − t(outside)) R(film outside) / R(total)',
      inputs: [...inputs, ...speedInput(envelope), ...envelope.inputs],
      formulas: [WALL_TEMPERATURES, TOUCH_TEMPERATURE],
      notes: [...WALL_NOTES, ...cautionOf(outsideSurfaceCelsius)],
    };
  }
  return hottest === undefined ? [] : [hottest];
}

function cautionOf(surfaceCelsius: number): readonly string[] {
  const caution = touchCaution(surfaceCelsius);
  if (caution === undefined) return [];
  const { thresholdCelsius, contact, provenance } = caution;
  const from = showQuantity(thresholdCelsius, 'temperature');
  return [`From ${from} on bare metal may burn in ${contact} (${provenance}); local rules decide.`];
}
