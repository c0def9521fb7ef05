/** What stands beside the probes of a section: their temperatures from wall to tip, their names, and what is wet. */
import type { MarkupElement } from '../../base/markup.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { CHARACTER_WIDTH, label, line, type XY } from '../svg.ts';
import type { SectionFrame } from './frame.ts';
import type { Section, SectionProbe } from './section.ts';
import { edgeOf, type PlacedProbe } from './stems.ts';

type StemPart = 'wall' | 'middle' | 'end';

/** px: on a stem shorter than this the temperature at this part would cover another. */
const ROOM_FOR: Readonly<Record<'flat' | 'upright', Readonly<Record<StemPart, number>>>> = {
  flat: { wall: 140, middle: 150, end: 80 },
  upright: { wall: 38, middle: 70, end: 0 },
};
const TICK = 5;
const LINE = 14;

interface StemTemperature {
  readonly part: StemPart;
  readonly along: number;
  readonly text: string;
}

export function drawTemperatures(placed: PlacedProbe, frame: SectionFrame): readonly MarkupElement[] {
  const room = ROOM_FOR[frame.isFlat ? 'flat' : 'upright'];
  return temperaturesOf(placed.probe)
    .filter(({ part, along }) => (part === 'middle' ? 2 * along : placed.probe.insertion) * frame.scale >= room[part])
    .flatMap((each) => drawTemperature(placed, frame, each));
}

function temperaturesOf({ profile, insertion }: SectionProbe): readonly StemTemperature[] {
  if (profile === undefined) return [];
  const { length, celsiusAt, headCelsius } = profile;
  const show = (celsius: number): string => showQuantity(celsius, 'temperature');
  return [
    { part: 'wall', along: 0, text: show(celsiusAt(0)) },
    { part: 'middle', along: length / 2, text: show(celsiusAt(length / 2)) },
    headCelsius === undefined
      ? { part: 'end', along: length, text: show(celsiusAt(length)) }
      : { part: 'end', along: insertion, text: `head ${show(headCelsius)}` },
  ];
}

/** px from the edge of a stem to where no temperature of it reaches: its insertion is measured there. */
export function besideTemperatures({ probe }: PlacedProbe, { isFlat }: SectionFrame): number {
  if (isFlat) return 34;
  const longest = Math.max(0, ...temperaturesOf(probe).map(({ text }) => text.length));
  return Math.max(34, TICK + 8 + longest * CHARACTER_WIDTH);
}

/** Across, m: past the end of the wall, and past the line that measures the insertion of the probe there. */
export function besideInsertion(placed: PlacedProbe, frame: SectionFrame): number {
  const { labelSide } = placed;
  const numberHeight = frame.isFlat ? 18 : 0;
  const measured = edgeOf(placed) + (labelSide * (besideTemperatures(placed, frame) + numberHeight)) / frame.scale;
  return labelSide < 0 ? Math.min(frame.wallFrom, measured) : Math.max(frame.wallTo, measured);
}

/** A tick at a place of the stem with its temperature. */
function drawTemperature(
  placed: PlacedProbe,
  frame: SectionFrame,
  { part, along, text }: StemTemperature,
): readonly MarkupElement[] {
  const { labelSide } = placed;
  const edge = { along, across: edgeOf(placed) };
  const end = frame.at(edge, [0, labelSide * TICK]);
  const clear = CLEAR_OF_LINES[frame.isFlat ? 'flat' : 'upright'][part];
  const [x, y] = frame.at(edge, [clear, labelSide * TICK]);
  const at: XY = frame.isFlat ? [x, y + (labelSide < 0 ? -3 : 12)] : [x + labelSide * 4, y + 4];
  const anchor = frame.isFlat ? FLAT_ANCHORS[part] : anchorOfSide(labelSide);
  return [line(frame.at(edge), end, { class: 'tick' }), label(at, text, { class: `temperature ${anchor}` })];
}

/** So that along a flat stem no text stands in the wall or runs into the name beyond the tip. */
const FLAT_ANCHORS: Readonly<Record<StemPart, string>> = { wall: 'start', middle: 'middle', end: 'end' };

/** px along the stem, so that no text stands on the surface or on the lines at the wall and at the tip. */
const CLEAR_OF_LINES: Readonly<Record<'flat' | 'upright', Readonly<Record<StemPart, number>>>> = {
  flat: { wall: 4, middle: 0, end: -4 },
  upright: { wall: 13, middle: 0, end: -11 },
};

function anchorOfSide(side: number): string {
  return side < 0 ? 'end' : 'start';
}

/** Beyond the tip. */
export function drawName({ probe, across, labelSide }: PlacedProbe, frame: SectionFrame): readonly MarkupElement[] {
  const lines = [probe.title, ...(probe.model === undefined ? [] : [probe.model])];
  const tip = { along: probe.insertion, across };
  const [x, y] = frame.isFlat ? frame.at(tip, [12, 0]) : frame.at(tip, [20, labelSide * 14]);
  const goesUp = frame.isFlat ? labelSide < 0 : y < frame.at(tip)[1];
  const first = goesUp ? y - LINE * (lines.length - 1) : y;
  const anchor = frame.isFlat ? 'start' : anchorOfSide(labelSide);
  return lines.map((text, row) =>
    label([x, first + LINE * row], text, { class: `${row === 0 ? 'title' : 'quiet'} ${anchor}` }),
  );
}

/** Under the free end of the wall, beyond the line that measures the insertion there. */
export function drawWetNames(
  { fitting, wall }: Section,
  placed: PlacedProbe,
  frame: SectionFrame,
): readonly MarkupElement[] {
  const words = [
    ...(fitting?.isWet === true ? ['fitting condenses'] : []),
    ...(wall?.isWet === true ? ['wall condenses'] : []),
  ];
  const { labelSide } = placed;
  const place = { along: 0, across: besideInsertion(placed, frame) };
  return words.map((text, row) => {
    const down = 10 + LINE * row;
    const [x, y] = frame.at(place, frame.isFlat ? [24, labelSide * down] : [down, labelSide * 8]);
    return label([x, y + 4], text, { class: `wet ${frame.isFlat ? 'start' : anchorOfSide(labelSide)}` });
  });
}
