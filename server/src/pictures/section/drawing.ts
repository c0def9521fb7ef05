/** A section through the wall and the probes of a point, to scale, with lengths, temperatures and what is wet. */
import type { MarkupElement } from '../../base/markup.ts';
import { wrapped } from '../../base/words.ts';
import { type Corner, showCorner } from '../../evaluate/facts/fact.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { drawing, group, label, line, type Place, placeAttributes, polygon, type XY } from '../svg.ts';
import { drawInsertion, drawScaleBar, drawSpacing, drawWallParts } from './dimensions.ts';
import { frameOf, type SectionFrame } from './frame.ts';
import { drawName, drawTemperatures, drawWetNames } from './labels.ts';
import type { Section, SectionSurface } from './section.ts';
import { drawProbe, placedProbes } from './stems.ts';
import { drawTemperatureKey, temperatureScale } from './temperatures.ts';
import { drawWall } from './wall.ts';

/** px of a line of text, and characters that fit into it. */
const LINE = 17;
const CHARACTERS = 112;

/** @param placeOf undefined where the place cannot be shown */
export function sectionDrawing(
  section: Section,
  title: string,
  placeOf: (origin: Origin) => Place | undefined,
): MarkupElement {
  const frame = frameOf(section);
  const scale = temperatureScale(section);
  const dewPoint = section.at?.dewPointCelsius;
  const placed = placedProbes(section, frame);
  const captions = captionOf(section);
  const lines = captions.flatMap((text) => wrapped(text, CHARACTERS));
  const linked = (origin: Origin | undefined, name: string, parts: readonly MarkupElement[]): MarkupElement => {
    const place = origin === undefined ? undefined : placeOf(origin);
    return group(place === undefined ? {} : placeAttributes(place, name), parts);
  };
  const keyTop = frame.height + 26;
  const captionTop = keyTop + 40;
  return drawing({
    width: frame.width,
    height: captionTop + lines.length * LINE,
    title,
    description: captions.join(' '),
    content: [
      linked(section.wallOrigin, 'wall', drawWall(section, frame)),
      ...placed.map((each) =>
        linked(each.probe.origin, each.probe.title, [
          ...drawProbe(each, frame, scale ?? NO_SCALE, dewPoint),
          ...drawTemperatures(each, frame),
          ...drawName(each, frame),
        ]),
      ),
      ...drawWetNames(section, placed[0], frame),
      ...drawWallParts(section, placed, frame),
      ...placed.map((each) => drawInsertion(each, frame)),
      ...drawSpacing(section, frame),
      ...drawAir(section, frame),
      ...drawScaleBar(frame, [24, keyTop + 6]),
      ...(scale === undefined ? [] : drawTemperatureKey(scale, dewPoint, [480, keyTop])),
      ...lines.map((text, row) => label([24, captionTop + row * LINE], text, row === 0 ? { class: 'title' } : {})),
    ],
  });
}

/** Without a temperature nothing is coloured by one. */
const NO_SCALE = { lowCelsius: 0, highCelsius: 0 };

/** What the air does: an arrow where the position of the air-temperature probe says its direction. */
function drawAir({ airSpeed, airTemperatureProbe }: Section, frame: SectionFrame): readonly MarkupElement[] {
  const position = airTemperatureProbe?.position;
  const isDirected = position === 'upstream' || position === 'downstream';
  const speed = airSpeed === undefined ? 'air' : `air ${airSpeed}`;
  const right = frame.width - 24;
  if (!isDirected) {
    const at: XY = frame.isFlat ? [right, 20] : [24, frame.height];
    return [label(at, `${speed}, direction not given`, { class: frame.isFlat ? 'quiet end' : 'quiet' })];
  }
  const [start, end]: readonly [XY, XY] = frame.isFlat
    ? [
        [right, 30],
        [right, frame.height - 30],
      ]
    : [
        [24, frame.height - 5],
        [144, frame.height - 5],
      ];
  const [x, y] = end;
  const head: readonly XY[] = frame.isFlat
    ? [end, [x - 5, y - 11], [x + 5, y - 11]]
    : [end, [x - 11, y - 5], [x - 11, y + 5]];
  const text: XY = frame.isFlat ? [right, 20] : [x + 10, y + 4];
  return [
    group({ class: 'air' }, [
      line(start, end, { class: 'flow' }),
      polygon(head, { class: 'flow-head' }),
      label(text, speed, frame.isFlat ? { class: 'end' } : {}),
    ]),
  ];
}

function captionOf(section: Section): readonly string[] {
  const { attitude, airTemperatureProbe, at, surroundingsCelsius, fitting, wall, notes } = section;
  const position = airTemperatureProbe?.position;
  const isPlan = attitude === 'horizontal' && position !== undefined && position !== 'above' && position !== 'below';
  const seen = `Seen from ${isPlan ? 'above' : 'the side'}, to scale.`;
  if (at === undefined) return [seen, ...notes];
  const outside =
    surroundingsCelsius === undefined ? '' : `, surroundings ${showQuantity(surroundingsCelsius, 'temperature')}`;
  const dewPoint = showQuantity(at.dewPointCelsius, 'temperature');
  return [
    seen,
    `Temperatures where the fitting is closest to the dew point: ${showCorner(at)}; dew point ${dewPoint}${outside}.`,
    ...(fitting === undefined ? [] : [surfaceWords('fitting', fitting, at)]),
    ...(wall === undefined ? [] : [surfaceWords('wall', wall, at)]),
    ...notes,
  ];
}

function surfaceWords(part: string, surface: SectionSurface, told: Corner): string {
  const { temperature, margin } = surface;
  const distance = showQuantity(Math.abs(margin.value), margin.dimension);
  const state = surface.isWet ? `${distance} below the dew point: it condenses` : `${distance} above the dew point`;
  const corner = margin.at === undefined ? '' : showCorner(margin.at);
  const elsewhere = corner === '' || corner === showCorner(told) ? '' : `, at ${corner}`;
  return `Inner surface of the ${part}: ${showQuantity(temperature.value, 'temperature')}, ${state}${elsewhere}.`;
}
