/** The wall of a section with its layers, the openings for the fittings, their insulation, and where it is wet. */
import type { MarkupElement } from '../../base/markup.ts';
import { group, line } from '../svg.ts';
import { openingOf, ownThickness, type SectionFrame } from './frame.ts';
import type { Section, SectionProbe } from './section.ts';
import { boxIn, sideOf, wetStrokes } from './shapes.ts';

/** Where a fitting goes through the wall, across, m. */
interface Opening {
  readonly from: number;
  readonly to: number;
  readonly probe: SectionProbe;
}

export function drawWall(section: Section, frame: SectionFrame): readonly MarkupElement[] {
  const openings = openingsOf(section, frame);
  let depth = 0;
  const layers = section.layers.flatMap(({ thickness, isInsulation }) => {
    const along = [-depth - thickness, -depth] as const;
    depth += thickness;
    const stretches = isInsulation ? between(frame, openings) : [[frame.wallFrom, frame.wallTo] as const];
    return stretches.map((across) => boxIn(frame, { along, across }, { class: isInsulation ? 'insulation' : 'metal' }));
  });
  const own = ownThickness(section);
  const collars = openings.flatMap(({ from, to, probe }) =>
    probe.insulation > 0
      ? [boxIn(frame, { along: [-own - probe.insulation, -own], across: [from, to] }, { class: 'collar' })]
      : [],
  );
  const [start, end] = [frame.at({ along: 0, across: frame.wallFrom }), frame.at({ along: 0, across: frame.wallTo })];
  return [...layers, ...collars, line(start, end, { class: 'surface' }), ...wetSurfaces(section, frame, openings)];
}

function openingsOf({ humidityProbe, airTemperatureProbe }: Section, { beside }: SectionFrame): readonly Opening[] {
  const opening = (probe: SectionProbe, centre: number): Opening => {
    const half = openingOf(probe);
    return { from: centre - half, to: centre + half, probe };
  };
  const openings = [
    opening(humidityProbe, 0),
    ...(airTemperatureProbe === undefined ? [] : [opening(airTemperatureProbe, beside)]),
  ];
  return openings.toSorted((one, other) => one.from - other.from);
}

/** The stretches of the wall's insulation that no opening takes. */
function between(
  { wallFrom, wallTo }: SectionFrame,
  openings: readonly Opening[],
): readonly (readonly [number, number])[] {
  let at = wallFrom;
  const stretches: (readonly [number, number])[] = [];
  for (const { from, to } of openings) {
    if (from > at) stretches.push([at, from]);
    at = Math.max(at, to);
  }
  return [...stretches, [at, wallTo]];
}

function wetSurfaces(section: Section, frame: SectionFrame, openings: readonly Opening[]): readonly MarkupElement[] {
  const { wall, fitting, humidityProbe } = section;
  const ofHumidityProbe = openings.find(({ probe }) => probe === humidityProbe);
  const [first, last] = [openings[0], openings.at(-1)];
  const isWallWet = wall?.isWet === true && first !== undefined && last !== undefined;
  const isFittingWet = fitting?.isWet === true && ofHumidityProbe !== undefined;
  const wallStrokes = isWallWet
    ? [...strokes(frame, frame.wallFrom, first.from), ...strokes(frame, last.to, frame.wallTo)]
    : [];
  const fittingStrokes = isFittingWet ? strokes(frame, ofHumidityProbe.from, ofHumidityProbe.to) : [];
  return [
    ...(isWallWet ? [group({ class: 'wall-condenses' }, wallStrokes)] : []),
    ...(isFittingWet ? [group({ class: 'fitting-condenses' }, fittingStrokes)] : []),
  ];
}

function strokes(frame: SectionFrame, from: number, to: number): readonly MarkupElement[] {
  const [start, end, inAir] = [
    frame.at({ along: 0, across: from }),
    frame.at({ along: 0, across: to }),
    frame.at({ along: 0, across: from }, [1, 0]),
  ];
  return wetStrokes(start, end, sideOf(start, end, inAir));
}
