/** Facts of a space about its wall: how close its inner surface comes to the dew point, how hot it is outside. */
import { remembered } from '../base/remembered.ts';
import { TOUCH_TEMPERATURE, touchCaution } from '../physics/touch-temperature.ts';
import { WALL_TEMPERATURES, wallTemperatures } from '../physics/wall.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { cornerOf } from './corner.ts';
import type { Fact, FactInput } from './fact.ts';
import type { SpaceEvaluation } from './space.ts';
import { type SpaceWall, spaceWall, surroundingsOf, WALL_NOTES, wallConditions, wallLayers } from './space-wall.ts';
import { type ColdWall, innerSurface, insulationForMargin, leastMargin } from './surface-margin.ts';
import { temperatureEnds } from './temperature-ends.ts';
import { worstFact } from './worst-fact.ts';

/** Computed once for all that ask: rules, hovers and reports. */
export const wallFacts: (space: SpaceEvaluation) => ReadonlyMap<string, Fact> = remembered((space) => {
  const facts = space.complete ? computedFacts(space) : [];
  return new Map(facts.map((fact) => [fact.id, fact]));
});

function computedFacts(space: SpaceEvaluation): readonly Fact[] {
  const wall = spaceWall(space);
  if (!wall.ok) return [];
  const surroundings = surroundingsOf(space.settings);
  if (!surroundings.ok) {
    const base = { ...marginBase(), inputs: wall.value.inputs, notes: WALL_NOTES };
    return [{ ...base, value: undefined, missing: surroundings.problem }];
  }
  const inputs = [...wall.value.inputs, surroundings.value.input];
  const cold = { layers: wallLayers(wall.value), outsideCelsius: surroundings.value.low };
  return [
    ...surfaceFacts(space, wall.value, cold, inputs),
    ...outerSurface(space, wall.value, surroundings.value.high, inputs),
  ];
}

function surfaceFacts(
  space: SpaceEvaluation,
  wall: SpaceWall,
  cold: ColdWall,
  inputs: readonly FactInput[],
): readonly Fact[] {
  const worst = leastMargin(space.phases, cold);
  if (worst === undefined) return [];
  const { envelope } = worst.phase;
  const { margin } = space.settings;
  const at = cornerOf(worst.state, envelope.phase, envelope.speed?.value.low);
  const surface = { ...worst, value: innerSurface(cold, worst.state, envelope) };
  const facts: Fact[] = [
    { ...worstFact(marginBase(), worst, inputs), at },
    {
      ...worstFact(
        {
          id: 'wall-inner-surface',
          title: 'inner surface of the wall where it is closest to the dew point',
          dimension: 'temperature',
          relation: 't − (t − t(outside)) R(film) / R(total)',
          formulas: [WALL_TEMPERATURES],
          notes: WALL_NOTES,
        },
        surface,
        inputs,
      ),
      at,
    },
  ];
  if (worst.value >= margin.value) return facts;
  const present = wall.insulation?.thickness ?? 0;
  const thickness = insulationForMargin(space.phases, cold, present, wall.insulationConductivity, margin.value);
  const needed = {
    id: 'wall-insulation-needed',
    title: 'insulation of the wall that keeps the margin to the dew point',
    dimension: 'length' as const,
    at,
    relation:
      'what the wall lacks of thermal resistance, times the conductivity of the insulation, to the next size sold',
    inputs: [...inputs, ...envelope.inputs],
    formulas: [WALL_TEMPERATURES],
    notes: WALL_NOTES,
  };
  const missing = 'no insulation sold keeps the wall so far above the dew point of this air';
  return [
    ...facts,
    thickness === undefined ? { ...needed, value: undefined, missing } : { ...needed, value: thickness },
  ];
}

function marginBase() {
  return {
    id: 'wall-margin',
    title: 'least margin of the inner surface of the wall to the dew point',
    dimension: 'temperature-difference' as const,
    relation: 't(surface) − td, with the coldest surroundings and the least air speed',
    formulas: [WALL_TEMPERATURES],
    notes: WALL_NOTES,
  };
}

/** With the hottest air and surroundings, and the highest air speed. */
function outerSurface(
  space: SpaceEvaluation,
  wall: SpaceWall,
  outsideCelsius: number,
  inputs: readonly FactInput[],
): readonly Fact[] {
  let hottest: Fact | undefined;
  for (const phase of space.phases) {
    const { envelope } = phase;
    const state = temperatureEnds(phase).at(-1);
    if (state === undefined) continue;
    const speed = envelope.speed?.value.high;
    const conditions = wallConditions(envelope, state.airCelsius, outsideCelsius, speed);
    const { outsideSurfaceCelsius } = wallTemperatures(wallLayers(wall), conditions);
    if (hottest?.value !== undefined && hottest.value >= outsideSurfaceCelsius) continue;
    const caution = touchCaution(outsideSurfaceCelsius);
    const notes =
      caution === undefined
        ? WALL_NOTES
        : [
            ...WALL_NOTES,
            `From ${showQuantity(caution.thresholdCelsius, 'temperature')} on bare metal may burn in ${caution.contact} (${caution.provenance}); local rules decide.`,
          ];
    hottest = {
      id: 'wall-outer-surface',
      title: 'hottest outer surface of the wall',
      dimension: 'temperature',
      value: outsideSurfaceCelsius,
      at: cornerOf(state, envelope.phase, speed),
      relation: 't(outside) + (t − t(outside)) R(film outside) / R(total)',
      inputs: [...inputs, ...envelope.inputs],
      formulas: [WALL_TEMPERATURES, TOUCH_TEMPERATURE],
      notes,
    };
  }
  return hottest === undefined ? [] : [hottest];
}
