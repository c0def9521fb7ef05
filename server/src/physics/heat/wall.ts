/** Surface temperatures of a plane wall, or of the wall around a fitting, and the insulation that a margin needs. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Formula } from '../formula.ts';

export interface WallLayer {
  /** m */
  readonly thickness: number;
  /** W/(m·K) */
  readonly conductivity: number;
}

export interface WallConditions {
  readonly insideCelsius: number;
  readonly outsideCelsius: number;
  /** Heat transfer coefficient from the air inside to the wall, W/(m²·K). */
  readonly insideFilm: number;
  /** The same outside. */
  readonly outsideFilm: number;
}

export interface WallTemperatures {
  readonly insideSurfaceCelsius: number;
  readonly outsideSurfaceCelsius: number;
}

/** No insulation on the outside brings the inner surface this close to, or beyond, the air inside. */
export interface SurfaceUnreachable {
  readonly kind: 'surface-unreachable';
  readonly insideCelsius: number;
}

/** W/(m²·K), with radiation: the inner surface resistance of ISO 6946 for horizontal heat flow, 0.13 m²·K/W. */
export const STILL_AIR_FILM = 1 / 0.13;

/** q = (T(in) - T(out)) / (1/h(in) + Σ d/λ + 1/h(out)), T(surface, in) = T(in) - q / h(in) */
export const WALL_TEMPERATURES: Formula = {
  id: 'wall-temperatures',
  title: 'Surface temperatures of a plane wall in steady state',
  source: 'ISO 6946, section 6 (plane layers in series; surface resistances 0.13 and 0.04 m²·K/W)',
  validity: [],
};

/**
 * Heat transfer coefficient of moving air on a wall, W/(m²·K), no lower than that of still air.
 *
 * h = 4 + 4·v, ISO 6946 annex on surface resistances, convective part only; from memory. Common practice takes it for
 * the walls of a ventilated space too.
 *
 * Worked value (by hand): 3 m/s gives 16 W/(m²·K).
 *
 * @param speed of the air along the wall, m/s
 */
export function movingAirFilm(speed: number): number {
  return Math.max(STILL_AIR_FILM, 4 + 4 * speed);
}

/**
 * Temperatures of both surfaces of a wall, °C.
 *
 * See `WALL_TEMPERATURES`. One-dimensional and steady: a fitting through the wall, a frame or a stud is a thermal
 * bridge and colder than this.
 *
 * Worked value (by hand): 25 K across 0.1 m of λ 0.04 with films of 1/0.13 and 1/0.04: 1.22 K within the air inside.
 *
 * @param layers from inside to outside
 */
export function wallTemperatures(layers: readonly WallLayer[], conditions: WallConditions): WallTemperatures {
  const { insideCelsius, outsideCelsius, insideFilm, outsideFilm } = conditions;
  const heatFlux = (insideCelsius - outsideCelsius) / totalResistance(layers, conditions);
  return {
    insideSurfaceCelsius: surfaceCelsius(insideCelsius, heatFlux, insideFilm),
    outsideSurfaceCelsius: surfaceCelsius(outsideCelsius, -heatFlux, outsideFilm),
  };
}

/**
 * Temperature of a surface that takes a heat flux from the air in front of it, °C: Ts = T − q/h.
 *
 * Worked value (EN ISO 12241-type example): 35 °C, 38.78 W/m², 14.07 W/(m²·K) gives 32.24 °C.
 *
 * @param airCelsius °C
 * @param heatFlux from the air into the surface, W/m²
 * @param film W/(m²·K)
 */
export function surfaceCelsius(airCelsius: number, heatFlux: number, film: number): number {
  return airCelsius - heatFlux / film;
}

/**
 * Insulation to add outside, m, that brings the inner surface to `wantedCelsius`; 0 where it is there already.
 *
 * The surface needs a resistance of (T(in) − T(out)) / (h(in)·(T(in) − wanted)); what the wall lacks of it, times the
 * insulation's conductivity, is the thickness.
 *
 * Worked value (Incropera, example 3.1, from memory): 35 °C skin behind 3 mm of λ 0.3 in air of 10 °C, film 7.9, loses
 * 100 W over 1.8 m² with 4.4 mm of λ 0.014.
 *
 * @param layers of the wall as it is, from inside to outside
 * @param insulationConductivity W/(m·K)
 * @param wantedCelsius temperature that the inner surface shall reach, °C; below the air inside
 */
export function insulationNeeded(
  layers: readonly WallLayer[],
  conditions: WallConditions,
  insulationConductivity: number,
  wantedCelsius: number,
): Outcome<number, SurfaceUnreachable> {
  const { insideCelsius, outsideCelsius, insideFilm } = conditions;
  if (wallTemperatures(layers, conditions).insideSurfaceCelsius >= wantedCelsius) return succeed(0);
  const permittedFlux = insideFilm * (insideCelsius - wantedCelsius);
  if (permittedFlux <= 0) return fail({ kind: 'surface-unreachable', insideCelsius });
  const lacking = (insideCelsius - outsideCelsius) / permittedFlux - totalResistance(layers, conditions);
  return succeed(lacking * insulationConductivity);
}

/** m²·K/W, films included. */
function totalResistance(layers: readonly WallLayer[], { insideFilm, outsideFilm }: WallConditions): number {
  const ofLayers = layers.reduce((sum, { thickness, conductivity }) => sum + thickness / conductivity, 0);
  return 1 / insideFilm + ofLayers + 1 / outsideFilm;
}
