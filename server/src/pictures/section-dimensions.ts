/** Dimension lines with their numbers, and the scale of the drawing. */
import type { MarkupElement } from '../base/markup.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { Section } from './section.ts';
import { openingOf, ownThickness, type SectionFrame, type SectionPlace } from './section-frame.ts';
import type { PlacedProbe } from './section-stems.ts';
import { group, label, line, type XY } from './svg.ts';

/** px from the stem to the line that measures its insertion. */
const INSERTION_LANE = { flat: 34, upright: 74 };
const ROW = 17;

export function drawInsertion({ probe, across, labelSide }: PlacedProbe, frame: SectionFrame): MarkupElement {
  const half = Math.max(probe.diameter ?? 0, probe.head?.diameter ?? 0) / 2;
  const edge = across + labelSide * half;
  const lane = labelSide * (frame.isFlat ? INSERTION_LANE.flat : INSERTION_LANE.upright);
  return dimension(
    frame,
    'insertion',
    [
      { along: 0, across: edge },
      { along: probe.insertion, across: edge },
    ],
    [0, lane],
    probe.insertion,
  );
}

/** From tip to tip. */
export function drawSpacing(
  { humidityProbe, airTemperatureProbe }: Section,
  frame: SectionFrame,
): readonly MarkupElement[] {
  if (airTemperatureProbe === undefined) return [];
  const tips = [
    { along: humidityProbe.insertion, across: 0 },
    { along: airTemperatureProbe.insertion, across: frame.beside },
  ] as const;
  return [dimension(frame, 'spacing', tips, [0, 0], airTemperatureProbe.spacing)];
}

/** Each layer in a row of its own: thin layers leave no room for two numbers side by side. */
export function drawLayers({ layers }: Section, frame: SectionFrame): readonly MarkupElement[] {
  const side = -frame.freeSide;
  const end = side > 0 ? frame.wallTo : frame.wallFrom;
  let depth = 0;
  return layers.map(({ thickness, title }, row) => {
    const ends = [
      { along: -depth, across: end },
      { along: -depth - thickness, across: end },
    ] as const;
    depth += thickness;
    return dimension(frame, 'thickness', ends, [0, side * (10 + ROW * row)], thickness, title);
  });
}

/** The insulation of a fitting, outside the wall itself; told once where both fittings have the same. */
export function drawCollar(
  { probe, across, labelSide }: PlacedProbe,
  section: Section,
  frame: SectionFrame,
): readonly MarkupElement[] {
  const isRepeated = probe !== section.humidityProbe && probe.insulation === section.humidityProbe.insulation;
  if (probe.insulation === 0 || isRepeated) return [];
  const own = ownThickness(section);
  const edge = across + labelSide * openingOf(probe);
  const ends = [
    { along: -own, across: edge },
    { along: -own - probe.insulation, across: edge },
  ] as const;
  return [dimension(frame, 'insulation', ends, [0, labelSide * 6], probe.insulation)];
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

/** @param name what is measured @param towards px along and across, from what is measured to the line that measures it */
function dimension(
  frame: SectionFrame,
  name: string,
  [from, to]: readonly [SectionPlace, SectionPlace],
  towards: XY,
  length: number,
  words = '',
): MarkupElement {
  const [start, end] = [frame.at(from, towards), frame.at(to, towards)];
  const text = [showQuantity(length, 'length'), words].filter((part) => part !== '').join(' ');
  const isDisplaced = towards[1] !== 0;
  const [x, y]: XY = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  const isSteep = Math.abs(end[1] - start[1]) > Math.abs(end[0] - start[0]);
  const side = Math.sign(towards[1]);
  const placed: XY = isSteep ? [x + (side < 0 ? -6 : 6), y + 4] : [x, y + (side > 0 ? 14 : -5)];
  const anchor = isSteep ? (side < 0 ? 'end' : 'start') : 'middle';
  return group({ class: `dimension of-${name}` }, [
    ...(isDisplaced
      ? [line(frame.at(from), start, { class: 'extension' }), line(frame.at(to), end, { class: 'extension' })]
      : []),
    line(start, end, { class: 'measure' }),
    ...[start, end].map(([atX, atY]) => line([atX - 3, atY + 3], [atX + 3, atY - 3], { class: 'measure' })),
    label(placed, text, { class: anchor }),
  ]);
}
