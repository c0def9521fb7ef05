/** Whether the fitting of a humidity probe is below the dew point inside: what condenses there runs along the stem. */
import { WALL_TEMPERATURES } from '../physics/wall.ts';
import { cornerOf } from './corner.ts';
import type { Fact } from './fact.ts';
import { inSampleLine } from './mounted-stem.ts';
import type { ResolvedPoint } from './point.ts';
import { quantityInput } from './probe-inputs.ts';
import type { SpaceEvaluation } from './space.ts';
import { FITTING_NOTES, fittingLayers, spaceWall, surroundingsOf, THICKEST_COLLAR } from './space-wall.ts';
import { innerSurface, insulationForMargin, leastMargin } from './surface-margin.ts';
import { isUnread } from './unread.ts';
import { worstFact } from './worst-fact.ts';

export function fittingFacts({ point }: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const located = point.humidityProbe?.value.mounting;
  const wall = spaceWall(space);
  const surroundings = surroundingsOf(space.settings);
  if (located === undefined || !wall.ok || !surroundings.ok) return [];
  const mounting = located.value;
  const unread = isUnread(located, 'insulation', mounting.insulation) || isUnread(located, 'path', mounting.path);
  if (unread || inSampleLine(mounting)) return [];
  const present = Math.max(0, mounting.insulation?.value.value ?? 0);
  const outsideCelsius = surroundings.value.low;
  const cold = { layers: fittingLayers(wall.value, present), outsideCelsius };
  const worst = leastMargin(space.phases, cold);
  if (worst === undefined) return [];
  const { envelope } = worst.phase;
  const at = cornerOf(worst.state, envelope.phase, envelope.speed?.value.low);
  const inputs = [
    ...(mounting.insulation === undefined
      ? [{ label: 'insulation of the fitting', text: 'none given' }]
      : quantityInput('insulation of the fitting', mounting.insulation)),
    ...wall.value.inputs,
    surroundings.value.input,
  ];
  const common = { formulas: [WALL_TEMPERATURES], notes: FITTING_NOTES };
  const margin = {
    ...common,
    id: 'fitting-margin',
    title: 'least margin of the fitting inside to the dew point',
    dimension: 'temperature-difference' as const,
    relation: 't(surface) − td, with the coldest surroundings and the least air speed',
  };
  const surface = {
    ...common,
    id: 'fitting-inner-surface',
    title: 'inner surface of the fitting where it is closest to the dew point',
    dimension: 'temperature' as const,
    relation: 't − (t − t(outside)) R(film) / R(total)',
  };
  const facts: readonly Fact[] = [
    { ...worstFact(margin, worst, inputs), at },
    { ...worstFact(surface, { ...worst, value: innerSurface(cold, worst.state, envelope) }, inputs), at },
  ];
  if (worst.value >= 0) return facts;
  const thickness = insulationForMargin(space.phases, cold, present, wall.value.insulationConductivity, 0);
  const needed = {
    ...common,
    id: 'fitting-insulation-needed',
    title: 'insulation of the fitting that keeps it above the dew point',
    dimension: 'length' as const,
    at,
    relation: 'the least thickness sold with which t(surface) ≥ td everywhere',
    inputs: [...inputs, ...envelope.inputs],
  };
  const missing = 'no usual collar keeps the fitting above the dew point of this air';
  const fits = thickness !== undefined && thickness <= THICKEST_COLLAR;
  return [...facts, fits ? { ...needed, value: thickness } : { ...needed, value: undefined, missing }];
}
