/** Where the places of a section lie on the paper: one scale for both directions, turned as the probe is mounted. */

import type { XY } from '../svg.ts';
import type { Position, Section, SectionProbe } from './section.ts';

/** m; `along` the stem, from the inner surface into the air; `across` it, from the humidity probe. */
export interface SectionPlace {
  readonly along: number;
  readonly across: number;
}

export interface SectionFrame {
  /** px per m. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  /** @param towards further px along and across */
  readonly at: (place: SectionPlace, towards?: XY) => XY;
  /** True where the stems lie flat on the paper. */
  readonly isFlat: boolean;
  /** The stretch of wall that is shown, across, m. */
  readonly wallFrom: number;
  readonly wallTo: number;
  readonly wallThickness: number;
  /** Of the air-temperature probe's stem, across, m; 0 without one. */
  readonly beside: number;
  /** The side of the humidity probe, and of the other one, on which there is room for labels: −1 or 1 across. */
  readonly freeSide: number;
}

const WIDTH = 760;
/** px around what is drawn to scale, for labels. */
const FLAT_MARGINS = { before: 110, beyond: 180, side: 100 };
const UPRIGHT_MARGINS = { before: 40, beyond: 64, side: 240 };
/** px that the section may take. */
const LARGEST_ALONG = { flat: WIDTH - FLAT_MARGINS.before - FLAT_MARGINS.beyond, upright: 330 };
const LARGEST_ACROSS = { flat: 260, upright: WIDTH - 2 * UPRIGHT_MARGINS.side };
/** px per m: no more than four times as large as life on most screens. */
const LARGEST_SCALE = 12_000;
/** m of wall to both sides of what goes through it. */
const WALL_BESIDE = 0.03;

export function frameOf(section: Section): SectionFrame {
  const { attitude, layers, humidityProbe, airTemperatureProbe } = section;
  const isFlat = attitude === 'horizontal';
  const wallThickness = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const beside =
    airTemperatureProbe === undefined ? 0 : airTemperatureProbe.apart * sideOf(airTemperatureProbe.position);
  const halfWidth = (probe: SectionProbe | undefined): number => (probe === undefined ? 0 : openingOf(probe));
  const ends = [
    [0, halfWidth(humidityProbe)],
    [beside, halfWidth(airTemperatureProbe)],
  ] as const;
  const wallFrom = Math.min(...ends.map(([centre, half]) => centre - half)) - WALL_BESIDE;
  const wallTo = Math.max(...ends.map(([centre, half]) => centre + half)) + WALL_BESIDE;
  const outside = Math.max(wallThickness, ownThickness(section) + deepestCollar(section));
  const along = outside + Math.max(humidityProbe.insertion, airTemperatureProbe?.insertion ?? 0);
  const room = isFlat ? 'flat' : 'upright';
  const scale = Math.min(LARGEST_ALONG[room] / along, LARGEST_ACROSS[room] / (wallTo - wallFrom), LARGEST_SCALE);
  const margins = isFlat ? FLAT_MARGINS : UPRIGHT_MARGINS;
  const alongPx = along * scale + margins.before + margins.beyond;
  const acrossPx = (wallTo - wallFrom) * scale + 2 * margins.side;
  const height = isFlat ? acrossPx : alongPx;
  const fromStart = margins.before + outside * scale;
  const fromSide = (isFlat ? margins.side : (WIDTH - (wallTo - wallFrom) * scale) / 2) - wallFrom * scale;
  return {
    scale,
    width: WIDTH,
    height,
    isFlat,
    wallFrom,
    wallTo,
    wallThickness,
    beside,
    freeSide: beside > 0 ? -1 : 1,
    at: (place, [alongMore, acrossMore] = [0, 0]) => {
      const x = fromStart + place.along * scale + alongMore;
      const y = fromSide + place.across * scale + acrossMore;
      if (isFlat) return [x, y];
      return attitude === 'head-down' ? [y, x] : [y, height - x];
    },
  };
}

/** The thickness of the wall that goes on around a fitting. */
export function ownThickness({ layers }: Section): number {
  return layers.reduce((sum, { thickness, isInsulation }) => sum + (isInsulation ? 0 : thickness), 0);
}

/** Half the width that a fitting takes of the wall's insulation, m: its own insulation all around, or room for a hand tool. */
export function openingOf({ diameter = 0, insulation }: SectionProbe): number {
  return diameter / 2 + Math.max(insulation, 0.015);
}

function deepestCollar({ humidityProbe, airTemperatureProbe }: Section): number {
  return Math.max(humidityProbe.insulation, airTemperatureProbe?.insulation ?? 0);
}

/** Down on the paper, or to the right, where the air flows to: so the upstream probe is on the other side. */
function sideOf(position: Position | undefined): number {
  return position === 'above' || position === 'upstream' ? -1 : 1;
}
