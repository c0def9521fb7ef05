/**
 * What the sensors of a space see on the moist-air chart: the worst corner of the air, and where the heater moves it.
 * The vapour pressure stays the same, so that the move is to the right, at constant dew point.
 */

import { groupedBy } from '../../base/grouped.ts';
import { humidityAtSensor } from '../../evaluate/dryness/dryness.ts';
import { type Corner, isKnown, type KnownFact, showCorner, showFact } from '../../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { sensorWarming } from '../../evaluate/resolved/heater.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { circle, group, line, polygon, type XY } from '../svg.ts';
import { type ChartItem, type ChartLayer, type ChartSubject, SWATCH, spotsAround, tagsOf } from './item.ts';
import { airOfHumidity, spotOfAir } from './plane.ts';

/** Points whose sensors see the same. */
interface Sensors {
  readonly points: readonly PointEvaluation[];
  readonly humidity: KnownFact;
  readonly at: Corner;
  /** K */
  readonly rise: number;
}

export const sensorItems: ChartLayer = (plane, subject) =>
  sensorsOf(subject.points).map((sensors): ChartItem => {
    const [air, sensor] = airAndSensor(sensors, plane.pressure);
    return itemOf(sensors, spotOfAir(plane, air), spotOfAir(plane, sensor), subject);
  });

/** The air at the sensors, which the chart must show. @param pressure Pa */
export function airAtSensors({ points }: Pick<ChartSubject, 'points'>, pressure: number): readonly AirState[] {
  return sensorsOf(points).flatMap((sensors) => airAndSensor(sensors, pressure));
}

function airAndSensor({ at, rise }: Sensors, pressure: number): readonly [AirState, AirState] {
  const air = airOfHumidity(at.airCelsius, at.relativeHumidity, pressure);
  return [air, { ...air, airCelsius: air.airCelsius + rise }];
}

function sensorsOf(points: readonly PointEvaluation[]): readonly Sensors[] {
  const known = points.flatMap((point) => {
    const humidity = point.facts.get(humidityAtSensor);
    const warming = sensorWarming(point.heater);
    if (!isKnown(humidity) || humidity.at === undefined || warming === undefined) return [];
    return [{ point, humidity, at: humidity.at, rise: warming.rise }];
  });
  const alike = groupedBy(known, ({ humidity, rise }) => `${humidity.value} ${rise}`);
  return [...alike.values()].map((group) => ({ ...group[0], points: group.map(({ point }) => point) }));
}

function itemOf(sensors: Sensors, air: XY, sensor: XY, { placeOf }: ChartSubject): ChartItem {
  const { points, humidity, at, rise } = sensors;
  const tags = tagsOf(points);
  const heated = rise === 0 ? 'not heated' : `heated by ${showQuantity(rise, 'temperature-difference')}`;
  const origin = points[0]?.heater.rise?.origin ?? points[0]?.entry.keyOrigin;
  return {
    mark: shift(air, sensor),
    swatch: rise === 0 ? shift([0, 0], [0, 0]) : shift([-SWATCH.across, 0], [SWATCH.across, 0]),
    text: `${tags}: sensor at ${showFact(humidity)} at the most, ${heated}, at ${showCorner(at)}`,
    place: origin === undefined ? undefined : placeOf(origin),
    label: `${tags} ${showFact(humidity)}`,
    spots: spotsAround(air, sensor),
  };
}

/** From the air to the sensor; one dot where they are the same. */
function shift(air: XY, sensor: XY) {
  const [x, y] = sensor;
  const dot = circle(air, 3.5, { class: 'dot' });
  if (x - air[0] < 1) return group({ class: 'shift' }, [dot]);
  const head = polygon([sensor, [x - 9, y - 4], [x - 9, y + 4]], { class: 'arrowhead' });
  return group({ class: 'shift' }, [line(air, [x - 8, y], { class: 'axis' }), dot, head]);
}
