/** The wall of a space, and the wall as it is around a fitting: their layers and what stands on both sides. */
import { fail, succeed } from '../../base/outcome.ts';
import type { Span } from '../../base/span.ts';
import type { Wall } from '../../model/model-types.generated.ts';
import { MATERIALS } from '../../physics/heat/materials.ts';
import { movingAirFilm, STILL_AIR_FILM, type WallConditions, type WallLayer } from '../../physics/heat/wall.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { FactInput } from '../facts/fact.ts';
import { type Given, given, positive } from '../facts/given.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { isUnread } from '../facts/unread.ts';

export interface SpaceWall {
  /** The wall itself; absent where only its insulation is given. */
  readonly own: WallLayer | undefined;
  readonly insulation: WallLayer | undefined;
  /** Of the wall's own insulation, or of mineral wool where it has none, W/(m·K). */
  readonly insulationConductivity: number;
  readonly inputs: readonly FactInput[];
}

/** m. Thicker insulation than this is hardly ever fitted around a probe. Common practice, no source. */
export const THICKEST_COLLAR = 0.05;

const INSULATION_UNLESS_GIVEN = 'mineral-wool';

export function spaceWall(space: Pick<SpaceEvaluation, 'located'>): Given<SpaceWall> {
  const located = space.located.value.wall;
  const wall = located?.value;
  if (wall === undefined) return fail('the space gives no wall');
  if (isUnread(located, 'insulation', wall.insulation)) return fail('the insulation of the wall cannot be read');
  const own = ownLayer(wall);
  if (!own.ok) return own;
  const insulation = insulationLayer(wall);
  if (!insulation.ok) return insulation;
  if (own.value === undefined && insulation.value === undefined) return fail('the wall has no layer');
  return succeed({
    own: own.value,
    insulation: insulation.value,
    insulationConductivity: MATERIALS[wall.insulationMaterial?.value ?? INSULATION_UNLESS_GIVEN].conductivity,
    inputs: [
      {
        label: 'wall',
        text: [layerText(own.value, wall.material?.value), layerText(insulation.value, wall.insulationMaterial?.value)]
          .filter((text) => text !== '')
          .join(', '),
        ...(located === undefined ? {} : { origin: located.origin }),
      },
    ],
  });
}

function ownLayer({ thickness, material }: Wall): Given<WallLayer | undefined> {
  if (thickness === undefined && material === undefined) return succeed(undefined);
  const length = positive(thickness, 'the wall gives no thickness');
  if (!length.ok) return length;
  const named = given(material?.value, 'the wall gives no material');
  return named.ok ? succeed({ thickness: length.value, conductivity: MATERIALS[named.value].conductivity }) : named;
}

function insulationLayer({ insulation, insulationMaterial }: Wall): Given<WallLayer | undefined> {
  if (insulation === undefined || insulation.value.value <= 0) return succeed(undefined);
  const named = given(insulationMaterial?.value, 'the wall gives no material of its insulation');
  if (!named.ok) return named;
  return succeed({ thickness: insulation.value.value, conductivity: MATERIALS[named.value].conductivity });
}

function layerText(layer: WallLayer | undefined, material: string | undefined): string {
  return layer === undefined ? '' : `${showQuantity(layer.thickness, 'length')} ${material ?? ''}`;
}

/** From inside to outside. */
export function wallLayers({ own, insulation }: SpaceWall): readonly WallLayer[] {
  return [own, insulation].flatMap((layer) => layer ?? []);
}

/** The wall around a fitting: without the insulation that the fitting interrupts, with the fitting's own in its place. */
export function fittingLayers(wall: SpaceWall, insulation: number): readonly WallLayer[] {
  const ofFitting = { thickness: insulation, conductivity: wall.insulationConductivity };
  return [...(wall.own === undefined ? [] : [wall.own]), ...(insulation > 0 ? [ofFitting] : [])];
}

/** The air around the walls outside, coldest to hottest. */
export function surroundingsOf({ surroundings }: SiteSettings): Given<Span & { readonly input: FactInput }> {
  const located = given(surroundings, 'the site gives no surroundings');
  if (!located.ok) return located;
  const { value, origin } = located.value;
  const text = showRange(value.low, value.high, 'temperature');
  return succeed({ low: value.low, high: value.high, input: { label: 'surroundings', text, origin } });
}

/** The least air speed in a phase is the worst for a surface: it leaves the wall to the cold outside. */
export function wallConditions(
  phase: PhaseEnvelope,
  airCelsius: number,
  outsideCelsius: number,
  speed: number | undefined = phase.speed?.value.low,
): WallConditions {
  return {
    insideCelsius: airCelsius,
    outsideCelsius,
    insideFilm: speed === undefined ? STILL_AIR_FILM : movingAirFilm(speed),
    outsideFilm: STILL_AIR_FILM,
  };
}

/** What every computation with the wall takes for granted. */
export const WALL_NOTES: readonly string[] = [
  'The wall is plane and steady; outside it stands still air (ISO 6946, 0.13 m²·K/W).',
  'Inside, the film is that of the air speed, h = 4 + 4 v, no less than that of still air.',
];

export const FITTING_NOTES: readonly string[] = [
  ...WALL_NOTES,
  'The fitting is taken as wall without the insulation of the wall and with its own in its place, of the same material, or of mineral wool.',
];
