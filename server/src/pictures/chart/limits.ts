/** The limits of the site and the alarms of the points on the moist-air chart: lines along which a quantity stands at them. */
import { groupedBy } from '../../base/grouped.ts';
import type { Setting } from '../../evaluate/facts/site-settings.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { type AlarmUse, alarmUses } from '../../evaluate/resolved/alarm-use.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { placeOn } from '../scale.ts';
import { line, polyline, type XY } from '../svg.ts';
import { lineOfQuantity } from './curves.ts';
import { type ChartItem, type ChartLayer, SWATCH, spotsAlong, tagsOf } from './item.ts';
import { type ChartPlane, FRAME } from './plane.ts';

/** The humidity limit of the sensors that are shown: another one where they are heated than where they are not. */
export const limitItems: ChartLayer = (plane, { space, points, placeOf }) => {
  const { sensorHumidityLimit, unheatedHumidityLimit } = space.settings;
  const itemOf = (title: string, { value, origin }: Setting): ChartItem => {
    const text = `${title} ${showQuantity(value, 'relative-humidity')}`;
    const points = lineOfQuantity(plane, 'relative-humidity', value);
    return lineItem(
      points,
      'limit',
      text,
      `limit ${showQuantity(value, 'relative-humidity')}`,
      origin === undefined ? undefined : placeOf(origin),
    );
  };
  const isHeated = points.some(({ heater }) => heater.on);
  const isUnheated = points.some(({ heater, point }) => !heater.on && point.humidityProbe !== undefined);
  return [
    ...(isHeated ? [itemOf('limit of a heated sensor', sensorHumidityLimit)] : []),
    ...(isUnheated ? [itemOf('limit of an unheated sensor', unheatedHumidityLimit)] : []),
  ];
};

export const alarmItems: ChartLayer = (plane, { points, placeOf }) =>
  alarmsOf(points).flatMap(({ alarm: { name, quantity, direction, limit }, points }): readonly ChartItem[] => {
    const line = lineOfAlarm(plane, quantity, limit.value.value);
    if (line.length < 2) return [];
    const { title, dimension } = quantityInfo(quantity);
    const value = showQuantity(limit.value.value, dimension);
    const text = `${tagsOf(points)}, alarm ${name}: ${title} ${direction} ${value}`;
    return [lineItem(line, 'alarm', text, `${name} ${value}`, placeOf(limit.origin))];
  });

/** An alarm, and the points that have it alike. */
interface SharedAlarm {
  readonly alarm: AlarmUse;
  readonly points: readonly PointEvaluation[];
}

function alarmsOf(points: readonly PointEvaluation[]): readonly SharedAlarm[] {
  const all = points.flatMap((point) => alarmUses(point).map((alarm) => ({ alarm, point })));
  const alike = groupedBy(all, ({ alarm: { name, quantity, direction, limit } }) =>
    [name, quantity, direction, limit.value.value].join(' '),
  );
  return [...alike.values()].map((group) => ({ alarm: group[0].alarm, points: group.map(({ point }) => point) }));
}

function lineOfAlarm(plane: ChartPlane, quantity: AlarmUse['quantity'], value: number): readonly XY[] {
  if (quantity === 'dew-point-at') return []; // of the air at a pressure that is not the chart's
  if (quantity !== 'air-temperature') return lineOfQuantity(plane, quantity, value);
  const x = placeOn(plane.temperature, value);
  return [
    [x, FRAME.bottom],
    [x, FRAME.top],
  ];
}

function lineItem(
  points: readonly XY[],
  style: 'limit' | 'alarm',
  text: string,
  label: string,
  place: ChartItem['place'],
): ChartItem {
  const seen = points.filter(([x, y]) => x >= FRAME.left && x <= FRAME.right && y >= FRAME.top && y <= FRAME.bottom);
  return {
    mark: polyline(points, { class: style }),
    swatch: line([-SWATCH.across, 0], [SWATCH.across, 0], { class: style }),
    text,
    place,
    label,
    spots: spotsAlong(seen),
  };
}
