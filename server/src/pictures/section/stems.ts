/** The probes of a section: their stems coloured by temperature, their heads, and where they are wet. */
import type { MarkupElement } from '../../base/markup.ts';
import { group, line } from '../svg.ts';
import type { SectionFrame } from './frame.ts';
import type { Section, SectionProbe } from './section.ts';
import { boxIn, sideOf, wetStrokes } from './shapes.ts';
import { heatClass, type TemperatureScale } from './temperatures.ts';

/** A probe with the place of its stem, across, m, and the side of it that its labels stand on, −1 or 1. */
export interface PlacedProbe {
  readonly probe: SectionProbe;
  readonly across: number;
  readonly labelSide: number;
}

/** The humidity probe first. */
export function placedProbes(
  { humidityProbe, airTemperatureProbe }: Section,
  frame: SectionFrame,
): readonly [PlacedProbe, ...PlacedProbe[]] {
  const first = { probe: humidityProbe, across: 0, labelSide: frame.freeSide };
  if (airTemperatureProbe === undefined) return [first];
  return [first, { probe: airTemperatureProbe, across: frame.beside, labelSide: -frame.freeSide }];
}

/** Where a probe ends on the side of its labels, across, m. */
export function edgeOf({ probe, across, labelSide }: PlacedProbe): number {
  return across + (labelSide * Math.max(probe.diameter ?? 0, probe.head?.diameter ?? 0)) / 2;
}

/** Pieces that a stem is coloured in. */
const PIECES = 24;
/** px of the stem outside the wall. */
const OUTSIDE = 26;

/** @param dewPointCelsius where the stems are wet below it */
export function drawProbe(
  placed: PlacedProbe,
  frame: SectionFrame,
  scale: TemperatureScale,
  dewPointCelsius: number | undefined,
): readonly MarkupElement[] {
  const { probe } = placed;
  const stemLength = probe.insertion - (probe.head?.length ?? 0);
  return [
    ...drawOutside(placed, frame),
    ...drawStem(placed, frame, scale, stemLength),
    ...drawHead(placed, frame, scale, stemLength),
    ...(dewPointCelsius === undefined ? [] : drawWet(placed, frame, dewPointCelsius)),
  ];
}

function drawOutside({ probe, across }: PlacedProbe, frame: SectionFrame): readonly MarkupElement[] {
  const half = (probe.diameter ?? 0) / 2;
  const depth = Math.max(frame.wallThickness, probe.insulation) + OUTSIDE / frame.scale;
  return [boxIn(frame, { along: [-depth, 0], across: [across - half, across + half] }, { class: 'metal' })];
}

function drawStem(
  { probe, across }: PlacedProbe,
  frame: SectionFrame,
  scale: TemperatureScale,
  length: number,
): readonly MarkupElement[] {
  const { profile, diameter } = probe;
  const tip = frame.at({ along: length, across });
  if (diameter === undefined) return [line(frame.at({ along: 0, across }), tip, { class: 'centre' })];
  const sides = [across - diameter / 2, across + diameter / 2] as const;
  const outline = boxIn(
    frame,
    { along: [0, length], across: sides },
    { class: profile === undefined ? 'metal' : 'edge' },
  );
  if (profile === undefined) return [outline];
  const pieces = Array.from({ length: PIECES }, (_, piece) => {
    const along = [(piece / PIECES) * length, ((piece + 1) / PIECES) * length] as const;
    return boxIn(
      frame,
      { along, across: sides },
      { class: heatClass(scale, profile.celsiusAt((along[0] + along[1]) / 2)) },
    );
  });
  return [...pieces, outline];
}

function drawHead(
  { probe, across }: PlacedProbe,
  frame: SectionFrame,
  scale: TemperatureScale,
  from: number,
): readonly MarkupElement[] {
  const { head, profile, insertion } = probe;
  if (head === undefined) return [];
  const celsius = profile?.headCelsius ?? profile?.celsiusAt(insertion);
  const sides = [across - head.diameter / 2, across + head.diameter / 2] as const;
  const shape = { along: [from, insertion] as const, across: sides };
  const fill = celsius === undefined ? 'metal' : heatClass(scale, celsius);
  const name = head.heated ? 'head heated' : 'head';
  return [boxIn(frame, shape, { class: fill }), boxIn(frame, shape, { class: name })];
}

/** The stem is wet from the wall to where it reaches the dew point: its temperature only rises from a cold wall. */
function drawWet(
  { probe, across }: PlacedProbe,
  frame: SectionFrame,
  dewPointCelsius: number,
): readonly MarkupElement[] {
  const { profile, diameter = 0 } = probe;
  const until = profile === undefined ? 0 : wetUntil(profile.celsiusAt, profile.length, dewPointCelsius);
  if (until === 0) return [];
  const strokes = [-1, 1].flatMap((side) => {
    const [start, end] = [0, until].map((along) => frame.at({ along, across: across + (side * diameter) / 2 }));
    const outwards = frame.at({ along: 0, across: across + (side * diameter) / 2 }, [0, side]);
    return start === undefined || end === undefined ? [] : wetStrokes(start, end, sideOf(start, end, outwards));
  });
  return [group({ class: 'stem-condenses' }, strokes)];
}

/** m from the wall; 0 where even the wall is dry. */
function wetUntil(celsiusAt: (distance: number) => number, length: number, dewPointCelsius: number): number {
  if (celsiusAt(0) >= dewPointCelsius) return 0;
  if (celsiusAt(length) < dewPointCelsius) return length;
  let [wet, dry] = [0, length];
  while (dry - wet > length / 1000) {
    const middle = (wet + dry) / 2;
    if (celsiusAt(middle) < dewPointCelsius) wet = middle;
    else dry = middle;
  }
  return dry;
}
