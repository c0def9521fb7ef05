/** Facts of a space about its wall: how close its inner surface comes to the dew point, how hot it is outside. */
import { TOUCH_TEMPERATURE, touchCaution } from '../../physics/heat/touch-temperature.ts';
import { WALL_TEMPERATURES, wallTemperatures } from '../../physics/heat/wall.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { spaceFact } from '../air/space-fact.ts';
import { temperatureEnds } from '../air/temperature-ends.ts';
import type { WorstState } from '../air/worst-fact.ts';
import { cornerOf } from '../facts/corner.ts';
import { speedInput } from '../facts/inputs.ts';
import { isUnread } from '../facts/unread.ts';
import { type SpaceWall, spaceWall, surroundingsOf, WALL_NOTES, wallConditions, wallLayers } from './space-wall.ts';
import { type ColdSurface, surfaceFacts } from './surface-facts.ts';

/** None for a space without a wall or a site without surroundings. */
export const wallSurface = surfaceFacts('wall', (space: SpaceEvaluation): ColdSurface | undefined => {
  const { settings, phases } = space;
  const wall = spaceWall(space);
  const surroundings = surroundingsOf(settings);
  if (!space.complete || !wall.ok || !surroundings.ok) return undefined;
  return {
    phases,
    wall: { layers: wallLayers(wall.value), outsideCelsius: surroundings.value.low },
    present: wall.value.insulation?.thickness ?? 0,
    conductivity: wall.value.insulationConductivity,
    margin: settings.margin.value,
    thickest: Number.POSITIVE_INFINITY,
    inputs: [...wall.value.inputs, surroundings.value.input],
    notes: WALL_NOTES,
  };
});

/** With the hottest air and surroundings, and the highest air speed. */
export const wallOuterSurface = spaceFact('wall-outer-surface', {
  title: 'hottest outer surface of the wall',
  dimension: 'temperature',
  compute: (space) => {
    const wall = spaceWall(space);
    const surroundings = surroundingsOf(space.settings);
    if (!space.complete || !wall.ok || !surroundings.ok) return undefined;
    const hottest = hottestOutside(space.phases, wall.value, surroundings.value.high);
    if (hottest === undefined) return undefined;
    const { state, phase, value } = hottest;
    const { envelope } = phase;
    return {
      value,
      at: cornerOf(state, envelope.phase, envelope.speed?.value.high),
      derivation: () => ({
        inputs: [...wall.value.inputs, surroundings.value.input, ...speedInput(envelope), ...envelope.inputs],
        relation: 't(outside) + (t − t(outside)) R(film outside) / R(total)',
        formulas: [WALL_TEMPERATURES, TOUCH_TEMPERATURE],
        notes: [...WALL_NOTES, ...cautionOf(value)],
      }),
    };
  },
});

function hottestOutside(phases: readonly PhaseEvaluation[], wall: SpaceWall, outsideCelsius: number) {
  let hottest: WorstState | undefined;
  for (const phase of phases) {
    const { envelope } = phase;
    const state = temperatureEnds(phase).at(-1);
    if (state === undefined || isUnread(envelope.located, 'speed', envelope.speed)) continue;
    const conditions = wallConditions(envelope, state.airCelsius, outsideCelsius, envelope.speed?.value.high);
    const value = wallTemperatures(wallLayers(wall), conditions).outsideSurfaceCelsius;
    if (hottest === undefined || value > hottest.value) hottest = { value, state, phase };
  }
  return hottest;
}

function cautionOf(surfaceCelsius: number): readonly string[] {
  const caution = touchCaution(surfaceCelsius);
  if (caution === undefined) return [];
  const { thresholdCelsius, contact, provenance } = caution;
  const from = showQuantity(thresholdCelsius, 'temperature');
  return [`From ${from} on bare metal may burn in ${contact} (${provenance}); local rules decide.`];
}
