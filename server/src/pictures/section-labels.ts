/** What stands beside the probes of a section: their temperatures from wall to tip, and their names. */
import type { MarkupElement } from '../base/markup.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import type { SectionFrame } from './section-frame.ts';
import type { PlacedProbe } from './section-stems.ts';
import { label, line, type XY } from './svg.ts';

/** px: a stem shorter than this has no room for a temperature in its middle. */
const ROOM_FOR_MIDDLE = { flat: 150, upright: 70 };
const TICK = 5;
const LINE = 14;

type StemPart = 'wall' | 'middle' | 'end';

export function drawTemperatures(placed: PlacedProbe, frame: SectionFrame): readonly MarkupElement[] {
  const { profile, insertion } = placed.probe;
  if (profile === undefined) return [];
  const { length, celsiusAt, headCelsius } = profile;
  const show = (celsius: number): string => showQuantity(celsius, 'temperature');
  const hasMiddle = length * frame.scale >= ROOM_FOR_MIDDLE[frame.isFlat ? 'flat' : 'upright'];
  return [
    ...temperature(placed, frame, 'wall', 0, show(celsiusAt(0))),
    ...(hasMiddle ? temperature(placed, frame, 'middle', length / 2, show(celsiusAt(length / 2))) : []),
    ...(headCelsius === undefined
      ? temperature(placed, frame, 'end', length, show(celsiusAt(length)))
      : temperature(placed, frame, 'end', insertion, `head ${show(headCelsius)}`)),
  ];
}

/** A tick at a place of the stem with its temperature. */
function temperature(
  { probe, across, labelSide }: PlacedProbe,
  frame: SectionFrame,
  part: StemPart,
  along: number,
  text: string,
): readonly MarkupElement[] {
  const half = Math.max(probe.diameter ?? 0, probe.head?.diameter ?? 0) / 2;
  const edge = { along, across: across + labelSide * half };
  const end = frame.at(edge, [0, labelSide * TICK]);
  const [x, y] = frame.isFlat ? end : frame.at(edge, [CLEAR_OF_LINES[part], labelSide * TICK]);
  const at: XY = frame.isFlat ? [x, y + (labelSide < 0 ? -3 : 12)] : [x + labelSide * 4, y + 4];
  const anchor = frame.isFlat ? FLAT_ANCHORS[part] : anchorOfSide(labelSide);
  return [line(frame.at(edge), end, { class: 'tick' }), label(at, text, { class: `temperature ${anchor}` })];
}

/** So that along a flat stem no text stands in the wall or runs into the name beyond the tip. */
const FLAT_ANCHORS: Readonly<Record<StemPart, string>> = { wall: 'start', middle: 'middle', end: 'end' };

/** px along an upright stem, so that no text stands on the surface or on the line at the tip. */
const CLEAR_OF_LINES: Readonly<Record<StemPart, number>> = { wall: 13, middle: 0, end: -10 };

function anchorOfSide(side: number): string {
  return side < 0 ? 'end' : 'start';
}

/** Beyond the tip. */
export function drawName({ probe, across, labelSide }: PlacedProbe, frame: SectionFrame): readonly MarkupElement[] {
  const lines = [probe.title, ...(probe.model === undefined ? [] : [probe.model])];
  const tip = { along: probe.insertion, across };
  const [x, y] = frame.isFlat ? frame.at(tip, [12, 0]) : frame.at(tip, [20, labelSide * 8]);
  const goesUp = frame.isFlat ? labelSide < 0 : y < frame.at(tip)[1];
  const first = goesUp ? y - LINE * (lines.length - 1) : y;
  const anchor = frame.isFlat ? 'start' : anchorOfSide(labelSide);
  return lines.map((text, row) =>
    label([x, first + LINE * row], text, { class: `${row === 0 ? 'title' : 'quiet'} ${anchor}` }),
  );
}
