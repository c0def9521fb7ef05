/** How long the air was where, by the recordings of a space: a shade over each cell of the moist-air chart. */
import type { MarkupElement } from '../../base/markup.ts';
import type { Density } from '../../evaluate/recorded/summary.ts';
import { outsideWords } from '../../evaluate/recorded/words.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { group, polygons, rectangle, type XY } from '../svg.ts';
import { type ChartItem, type ChartLayer, type ChartSubject, SWATCH } from './item.ts';
import { airOfDewPoint, type ChartPlane, spotOfAir } from './plane.ts';

/** Shades, the faintest first. */
const SHADES = [0.1, 0.18, 0.28, 0.4, 0.55];

export const densityItems: ChartLayer = (plane, { recordings }) =>
  recordings.map(
    ({ log, summary, place }): ChartItem => ({
      mark: group({ class: 'density' }, shades(plane, summary.density)),
      swatch: group({ class: 'density' }, shadesOfSwatch()),
      text: `recorded in ${log}, shaded the more the longer the air was there. ${outsideWords(summary)}`,
      place,
      label: '',
      spots: [],
    }),
  );

/** The ends of what was recorded, which the chart must show. @param pressure Pa */
export function recordedAir({ recordings }: Pick<ChartSubject, 'recordings'>, pressure: number): readonly AirState[] {
  return recordings.flatMap(({ summary: { density } }) => {
    if (density.cells.length === 0) return [];
    const temperatures = density.cells.map(([celsius]) => celsius);
    const dewPoints = density.cells.map(([, dewPoint]) => dewPoint);
    return [
      airOfDewPoint(Math.min(...temperatures), Math.min(...dewPoints), pressure),
      airOfDewPoint(Math.max(...temperatures) + density.step, Math.max(...dewPoints) + density.step, pressure),
    ];
  });
}

/** By the root of the time, so that short excursions stay visible beside days of steady air. */
function shades(plane: ChartPlane, { step, cells }: Density): readonly MarkupElement[] {
  const longest = Math.max(...cells.map(([, , seconds]) => seconds));
  const byShade = SHADES.map((): (readonly XY[])[] => []);
  for (const [celsius, dewPoint, seconds] of cells) {
    const shade = Math.ceil(Math.sqrt(seconds / longest) * SHADES.length) - 1;
    byShade[Math.max(0, shade)]?.push(outlineOfCell(plane, celsius, dewPoint, step));
  }
  return byShade.map((outlines, shade) => polygons(outlines, { 'fill-opacity': SHADES[shade] }));
}

/** Cut off at saturation, which no air passes. */
function outlineOfCell(plane: ChartPlane, celsius: number, dewPoint: number, step: number): readonly XY[] {
  const corners = [
    [celsius, dewPoint],
    [celsius + step, dewPoint],
    [celsius + step, dewPoint + step],
    [celsius, dewPoint + step],
  ] as const;
  return corners.map(([airCelsius, dewPointCelsius]) =>
    spotOfAir(plane, airOfDewPoint(airCelsius, Math.min(dewPointCelsius, airCelsius), plane.pressure)),
  );
}

function shadesOfSwatch(): readonly MarkupElement[] {
  const width = (2 * SWATCH.across) / SHADES.length;
  return SHADES.map((opacity, index) => {
    const left = -SWATCH.across + index * width;
    return rectangle([left, -SWATCH.down], [left + width, SWATCH.down], { 'fill-opacity': opacity });
  });
}
