/** Whether the fitting of a humidity probe is below the dew point inside: what condenses there runs along the stem. */

import type { SpaceEvaluation } from '../air/space.ts';
import { quantityInput } from '../facts/inputs.ts';
import { isUnread } from '../facts/unread.ts';
import { inSampleLine } from '../resolved/mounted-stem.ts';
import { completeSpace } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { FITTING_NOTES, fittingLayers, spaceWall, surroundingsOf, THICKEST_COLLAR } from './space-wall.ts';
import { type ColdSurface, surfaceFacts } from './surface-facts.ts';

/** None for a point without a mounted humidity probe, in a space without a wall, or on a site without surroundings. */
export const fittingSurface = surfaceFacts('fitting', (point: ResolvedPoint) => {
  const space = completeSpace(point);
  return space === undefined ? undefined : fittingOf(point, space);
});

function fittingOf({ point }: ResolvedPoint, space: SpaceEvaluation): ColdSurface | undefined {
  const mounting = point.humidityProbe?.value.mounting;
  const wall = spaceWall(space);
  const surroundings = surroundingsOf(space.settings);
  if (mounting === undefined || !wall.ok || !surroundings.ok) return undefined;
  const { insulation, path } = mounting.value;
  const unread = isUnread(mounting, 'insulation', insulation) || isUnread(mounting, 'path', path);
  if (unread || inSampleLine(mounting.value)) return undefined;
  const present = Math.max(0, insulation?.value.value ?? 0);
  const label = 'insulation of the fitting';
  return {
    phases: space.phases,
    wall: { layers: fittingLayers(wall.value, present), outsideCelsius: surroundings.value.low },
    present,
    conductivity: wall.value.insulationConductivity,
    margin: 0,
    thickest: THICKEST_COLLAR,
    inputs: [
      ...(insulation === undefined ? [{ label, text: 'none given' }] : quantityInput(label, insulation)),
      ...wall.value.inputs,
      surroundings.value.input,
    ],
    notes: FITTING_NOTES,
  };
}
