/** Whether the fitting of a humidity probe is below the dew point inside: what condenses there runs along the stem. */

import { quantityInput } from '../air-temperature/probe-inputs.ts';
import type { Fact } from '../facts/fact.ts';
import { isUnread } from '../facts/unread.ts';
import type { ResolvedPoint } from '../point.ts';
import { inSampleLine } from '../resolved/mounted-stem.ts';
import type { SpaceEvaluation } from '../space.ts';
import { FITTING_NOTES, fittingLayers, spaceWall, surroundingsOf, THICKEST_COLLAR } from './space-wall.ts';
import { surfaceFacts } from './surface-facts.ts';

export function fittingFacts({ point }: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const mounting = point.humidityProbe?.value.mounting;
  const wall = spaceWall(space);
  const surroundings = surroundingsOf(space.settings);
  if (mounting === undefined || !wall.ok || !surroundings.ok) return [];
  const { insulation, path } = mounting.value;
  const unread = isUnread(mounting, 'insulation', insulation) || isUnread(mounting, 'path', path);
  if (unread || inSampleLine(mounting.value)) return [];
  const present = Math.max(0, insulation?.value.value ?? 0);
  const label = 'insulation of the fitting';
  return surfaceFacts(space.phases, {
    part: 'fitting',
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
  });
}
