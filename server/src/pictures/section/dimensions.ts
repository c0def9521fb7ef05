/** Dimension lines with their numbers, and the scale of the drawing. */
import type { MarkupElement } from '../../base/markup.ts';
import { wrapped } from '../../base/words.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { CHARACTER_WIDTH, group, label, line, type XY } from '../svg.ts';
import { openingOf, ownThickness, type SectionFrame, type SectionPlace } from './frame.ts';
import { besideInsertion, besideTemperatures } from './labels.ts';
import type { Section } from './section.ts';
import { sideOf } from './shapes.ts';
import { edgeOf, type PlacedProbe } from './stems.ts';

export function drawInsertion(placed: PlacedProbe, frame: SectionFrame): MarkupElement {
  const { probe, labelSide } = placed;
  const across = edgeOf(placed);
  const lane = labelSide * besideTemperatures(placed, frame);
  const text = showQuantity(probe.insertion, 'length');
  // In the middle, but never across the lines at the wall.
  const leastAlong = frame.isFlat ? (text.length * CHARACTER_WIDTH) / 2 + 6 : 12;
  const [x, y] = frame.at({ along: 0, across }, [Math.max(leastAlong, (probe.insertion * frame.scale) / 2), lane]);
  const number = frame.isFlat
    ? label([x, y + (labelSide > 0 ? 14 : -7)], text, { class: 'middle' })
    : label([x + labelSide * 6, y + 4], text, { class: labelSide < 0 ? 'end' : 'start' });
  const ends = [
    { along: 0, across },
    { along: probe.insertion, across },
  ] as const;
  return dimension(frame, { name: 'insertion', ends, lane, numbers: [number] });
}

/** From tip to tip. */
export function drawSpacing(
  { humidityProbe, airTemperatureProbe }: Section,
  frame: SectionFrame,
): readonly MarkupElement[] {
  if (airTemperatureProbe === undefined) return [];
  const ends = [
    { along: humidityProbe.insertion, across: 0 },
    { along: airTemperatureProbe.insertion, across: frame.beside },
  ] as const;
  const text = showQuantity(airTemperatureProbe.spacing, 'length');
  const [start, end] = [frame.at(ends[0]), frame.at(ends[1])];
  const [x, y]: XY = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  // Beyond the tips, so far off the line that it keeps clear of a slanted one too.
  const side = sideOf(start, end, frame.at(ends[0], [1, 0]));
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const [across, down] = [(-side * (end[1] - start[1])) / length, (side * (end[0] - start[0])) / length];
  const distance = 8 + Math.abs(across * text.length * CHARACTER_WIDTH) / 2 + Math.abs(down) * 7;
  const number = label([x + across * distance, y + down * distance + 4], text, { class: 'middle' });
  return [dimension(frame, { name: 'spacing', ends, lane: 0, numbers: [number] })];
}

/** px from the end of the wall to the first line that measures something of it, and from line to line. */
const FIRST_LANE = 10;
const LANE = 17;
/** px from row to row, and from the middle of the first row to the surface or the last line. */
const ROW = 14;
const CLEAR = 11;

/** What is measured of the wall: where it begins and ends outwards, m, and from where across. */
interface WallPart {
  readonly name: 'thickness' | 'insulation';
  readonly from: number;
  readonly to: number;
  readonly across: number;
  readonly words: string;
}

/**
 * The layers at one end of the wall, the insulation of each fitting at the end beside it. Thin parts leave no room for
 * two numbers side by side, so all lines stand in lanes of their own and all numbers in rows beyond the last.
 */
export function drawWallParts(
  section: Section,
  placed: readonly PlacedProbe[],
  frame: SectionFrame,
): readonly MarkupElement[] {
  return [-1, 1].flatMap((side) => {
    const parts = [
      ...(side === frame.freeSide ? [] : layersOf(section, wallEnd(frame, side))),
      ...placed.filter(({ labelSide }) => labelSide === side).flatMap((each) => collarOf(each, section)),
    ].sort((one, other) => one.from + one.to - other.from - other.to);
    const beside = placed.find(({ labelSide }) => labelSide === side);
    // Flat, these numbers would reach into the air.
    const end = frame.isFlat && beside !== undefined ? besideInsertion(beside, frame) : wallEnd(frame, side);
    return drawParts(parts, side, end, frame);
  });
}

function wallEnd({ wallFrom, wallTo }: SectionFrame, side: number): number {
  return side < 0 ? wallFrom : wallTo;
}

function layersOf({ layers }: Section, across: number): readonly WallPart[] {
  let depth = 0;
  return layers.map(({ thickness, title }) => {
    const from = depth;
    depth += thickness;
    return { name: 'thickness', from, to: depth, across, words: title };
  });
}

/** The insulation of a fitting, outside the wall itself; told once where both fittings have the same. */
function collarOf({ probe, across, labelSide }: PlacedProbe, section: Section): readonly WallPart[] {
  const isRepeated = probe !== section.humidityProbe && probe.insulation === section.humidityProbe.insulation;
  if (probe.insulation === 0 || isRepeated) return [];
  const from = ownThickness(section);
  const to = from + probe.insulation;
  return [{ name: 'insulation', from, to, across: across + labelSide * openingOf(probe), words: '' }];
}

/** @param end from where their lanes and rows are counted, across, m */
function drawParts(
  parts: readonly WallPart[],
  side: number,
  end: number,
  frame: SectionFrame,
): readonly MarkupElement[] {
  const lastLane = side * (FIRST_LANE + LANE * (parts.length - 1));
  let taken = 0;
  return parts.map(({ name, from, to, across, words }, index) => {
    const middle = (from + to) / 2;
    const spot = (px: number): XY =>
      frame.isFlat
        ? frame.at({ along: -middle, across: end }, [0, lastLane + side * (CLEAR + px)])
        : frame.at({ along: 0, across: end }, [-CLEAR - px, lastLane + side * 6]);
    const [x] = spot(0);
    const room = frame.isFlat ? 2 * Math.min(x, frame.width - x) : side < 0 ? x : frame.width - x;
    const lines = wrapped(`${showQuantity(to - from, 'length')} ${words}`.trim(), Math.floor(room / CHARACTER_WIDTH));
    // Upright a number stands beside its part, as far as the air and the number before leave room.
    const start = frame.isFlat ? taken : Math.max(taken, middle * frame.scale - CLEAR - ((lines.length - 1) * ROW) / 2);
    taken = start + lines.length * ROW;
    const spots = lines.map((_, row) => spot(start + row * ROW)).sort(([, one], [, other]) => one - other);
    const anchor = frame.isFlat ? 'middle' : side < 0 ? 'end' : 'start';
    return dimension(frame, {
      name,
      ends: [
        { along: -from, across },
        { along: -to, across },
      ],
      lane: side * (FIRST_LANE + LANE * index) + (end - across) * frame.scale,
      numbers: spots.map(([left, y], row) => label([left, y + 4], lines[row] ?? '', { class: anchor })),
    });
  });
}

/** A length that is round at this scale. */
export function drawScaleBar({ scale }: SectionFrame, [x, y]: XY): readonly MarkupElement[] {
  const length = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1].findLast((step) => step * scale <= 130) ?? 0.01;
  const end = x + length * scale;
  return [
    line([x, y], [end, y], { class: 'scale' }),
    label([end + 8, y + 4], showQuantity(length, 'length'), { class: 'quiet' }),
  ];
}

interface Dimension {
  /** What is measured. */
  readonly name: 'insertion' | 'spacing' | WallPart['name'];
  readonly ends: readonly [SectionPlace, SectionPlace];
  /** px across, from what is measured to the line that measures it. */
  readonly lane: number;
  readonly numbers: readonly MarkupElement[];
}

function dimension(frame: SectionFrame, { name, ends: [from, to], lane, numbers }: Dimension): MarkupElement {
  const [start, end] = [frame.at(from, [0, lane]), frame.at(to, [0, lane])];
  const extensions = [
    line(frame.at(from), start, { class: 'extension' }),
    line(frame.at(to), end, { class: 'extension' }),
  ];
  return group({ class: `dimension of-${name}` }, [
    ...(lane === 0 ? [] : extensions),
    line(start, end, { class: 'measure' }),
    ...[start, end].map(([x, y]) => line([x - 3, y + 3], [x + 3, y - 3], { class: 'measure' })),
    ...numbers,
  ]);
}
