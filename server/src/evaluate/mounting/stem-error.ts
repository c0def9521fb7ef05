/** How far the wall pulls a thermometer from the air temperature, along its stem and by radiation. */
import { fail, succeed } from '../../base/outcome.ts';
import { dryAirProperties } from '../../physics/air/air-properties.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { filmCoefficient } from '../../physics/heat/head-conductance.ts';
import { CLEANED_STEEL_EMISSIVITY, radiationError } from '../../physics/heat/radiation.ts';
import { insertionNeeded, stemConductionError } from '../../physics/heat/stem-conduction.ts';
import { wallTemperatures } from '../../physics/heat/wall.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { FactInput } from '../facts/fact.ts';
import { type Given, given } from '../facts/given.ts';
import type { MountedStem } from '../resolved/mounted-stem.ts';
import type { Thermometer } from '../resolved/thermometer.ts';
import { FITTING_NOTES, fittingLayers, spaceWall, surroundingsOf, wallConditions, wallLayers } from './space-wall.ts';

/** The pull of the wall on one thermometer, computed for any state of a phase. */
export interface WallPull {
  /** Along the stem, K; 0 or more. */
  readonly stemConduction: (state: AirState, phase: PhaseEnvelope) => Given<number>;
  /** By radiation from the wall that the thermometer sees, K; 0 or more. */
  readonly radiation: (state: AirState, phase: PhaseEnvelope) => Given<number>;
  /** Least insertion in m at which the stem-conduction error is no more than `largestError` in K, above 0. */
  readonly insertionFor: (state: AirState, phase: PhaseEnvelope, largestError: number) => Given<number>;
  readonly inputs: readonly FactInput[];
  readonly notes: readonly string[];
}

const STEM_NOTES: readonly string[] = [
  'At the least air speed, with the coldest or the hottest surroundings, whichever pulls more: the error only shrinks with speed.',
  'The sensor is taken to sit at the tip; leads inside the stem are left out.',
  ...FITTING_NOTES,
];

/** Another insertion or insulation of the fitting than the mounting's, m. */
export interface OtherMounting {
  readonly insertion?: number;
  readonly insulation?: number;
}

/** @param other what is asked about in place of the mounting as it is */
export function wallPull(thermometer: Thermometer, space: SpaceEvaluation, other: OtherMounting = {}): Given<WallPull> {
  const mounted = thermometer.stem;
  if (!mounted.ok) return mounted;
  const wall = spaceWall(space);
  if (!wall.ok) return wall;
  const surroundings = surroundingsOf(space.settings);
  if (!surroundings.ok) return surroundings;
  const { stem } = mounted.value;
  const { insertion = mounted.value.insertion, insulation = mounted.value.insulation } = other;
  const ends = [surroundings.value.low, surroundings.value.high];
  const aroundFitting = fittingLayers(wall.value, insulation);
  const farFromFitting = wallLayers(wall.value);
  const filmAt = (state: AirState, phase: PhaseEnvelope): Given<number> => {
    const speed = given(phase.speed?.value.low, 'no air speed is given');
    return speed.ok ? succeed(stemFilm(mounted.value, speed.value, state)) : speed;
  };
  const surfaces = (layers: typeof aroundFitting, state: AirState, phase: PhaseEnvelope): readonly number[] =>
    ends.map((outside) => {
      const conditions = wallConditions(phase, state.airCelsius, outside);
      return wallTemperatures(layers, conditions).insideSurfaceCelsius;
    });
  const worst = (errors: readonly number[]): Given<number> => succeed(Math.max(...errors.map(Math.abs)));
  return succeed({
    stemConduction: (state, phase) => {
      const film = filmAt(state, phase);
      if (!film.ok) return film;
      const fittings = surfaces(aroundFitting, state, phase);
      return worst(fittings.map((wall) => stemConductionError(stem, insertion, film.value, state.airCelsius, wall)));
    },
    radiation: (state, phase) => {
      const film = filmAt(state, phase);
      if (!film.ok) return film;
      const walls = surfaces(farFromFitting, state, phase);
      return worst(walls.map((wall) => radiationError(state.airCelsius, wall, CLEANED_STEEL_EMISSIVITY, film.value)));
    },
    insertionFor: (state, phase, largestError) => {
      const film = filmAt(state, phase);
      if (!film.ok) return film;
      const needed = surfaces(aroundFitting, state, phase).flatMap((wall) => {
        const insertionFor = insertionNeeded(stem, film.value, state.airCelsius, wall, largestError);
        return insertionFor.ok ? [insertionFor.value] : [];
      });
      return needed.length === 0 ? fail('no insertion keeps an error of nothing') : worst(needed);
    },
    inputs: [...mounted.value.inputs, ...wall.value.inputs, surroundings.value.input],
    notes: STEM_NOTES,
  });
}

/**
 * The air's film on the stem, W/(m²·K). Most of a stem differs so little from the air that it drives next to no
 * natural convection: leaving that difference out makes the film poor and the error large.
 */
export function stemFilm(
  { stem, insertion, axis }: MountedStem,
  speed: number,
  state: Pick<AirState, 'airCelsius' | 'pressure'>,
): number {
  const cylinder = { diameter: stem.diameter, length: insertion, axis };
  return filmCoefficient(cylinder, speed, 0, dryAirProperties(state.airCelsius, state.pressure));
}
