/** The envelopes of a space on the moist-air chart: areas, cut where the air is saturated. */
import type { PhaseEnvelope } from '../../evaluate/air/envelope.ts';
import { showRange } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { seriesClass } from '../picture-style.ts';
import { polygon, rectangle, type XY } from '../svg.ts';
import { type ChartItem, type ChartLayer, type LabelSpot, SWATCH } from './item.ts';
import { outlineOf } from './outline.ts';
import { type ChartPlane, spotOfAir } from './plane.ts';

export const phaseItems: ChartLayer = (plane, { phases, here, placeOf }) =>
  phases.map((phase, index): ChartItem => {
    const { envelope } = phase;
    const outline = spotsOfOutline(plane, envelope);
    const style = { class: `area ${seriesClass(index)}` };
    return {
      mark: polygon(outline, style),
      swatch: rectangle([-SWATCH.across, -SWATCH.down], [SWATCH.across, SWATCH.down], style),
      text: textOf(envelope),
      place: placeOf(envelope.keyOrigin),
      label: nameOf(envelope),
      spots: spotsInside(outline),
      isHere: phase === here,
    };
  });

export function spotsOfOutline(plane: ChartPlane, envelope: PhaseEnvelope): readonly XY[] {
  return outlineOf(envelope, plane.pressure).map((air) => spotOfAir(plane, air));
}

function nameOf({ phase }: PhaseEnvelope): string {
  return phase ?? 'air';
}

function textOf(envelope: PhaseEnvelope): string {
  const { temperature, humidity, humidityKey } = envelope;
  const [air, moisture] = [temperature, humidity].map(({ value }) => showRange(value.low, value.high, value.dimension));
  const measure = humidityKey === 'humidity' ? '' : `${quantityInfo(humidityKey).title} `;
  return `${nameOf(envelope)}: ${air}, ${measure}${moisture}`;
}

/** Between the driest and the wettest air of one temperature, first in the middle. */
function spotsInside(outline: readonly XY[]): readonly LabelSpot[] {
  const half = outline.length / 2;
  return [0.5, 0.65, 0.35, 0.8, 0.2].flatMap((share): LabelSpot[] => {
    const index = Math.round(share * (half - 1));
    const [dry, wet] = [outline[index], outline[outline.length - 1 - index]];
    if (dry === undefined || wet === undefined) return [];
    return [{ at: [(dry[0] + wet[0]) / 2, (dry[1] + wet[1]) / 2 + 4], anchor: 'middle' }];
  });
}
