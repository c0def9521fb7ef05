/** The salts that the points of a space are checked with, on the moist-air chart: humidity over each at the check. */
import { remembered } from '../../base/remembered.ts';
import { saltPlan } from '../../evaluate/checks/salts.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { polygon } from '../svg.ts';
import { type ChartItem, type ChartLayer, type ChartSubject, spotsAround } from './item.ts';
import { airOfHumidity, spotOfAir } from './plane.ts';

interface CheckSalt {
  readonly name: string;
  readonly celsius: number;
  readonly relativeHumidity: number;
  readonly point: PointEvaluation;
}

export const saltItems: ChartLayer = (plane, subject) =>
  saltsOf(subject).map((salt): ChartItem => {
    const spot = spotOfAir(plane, airOver(salt, plane.pressure));
    const humidity = showQuantity(salt.relativeHumidity, 'relative-humidity');
    const origin = salt.point.point.checks?.origin;
    return {
      mark: diamond(spot[0], spot[1]),
      swatch: diamond(0, 0),
      text: `check over ${salt.name}: ${humidity} at ${showQuantity(salt.celsius, 'temperature')}`,
      place: origin === undefined ? undefined : subject.placeOf(origin),
      label: `${salt.name} ${humidity}`,
      spots: spotsAround(spot),
    };
  });

/** The air over the salts, which the chart must show. @param pressure Pa */
export function airOverSalts(subject: Pick<ChartSubject, 'points'>, pressure: number): readonly AirState[] {
  return saltsOf(subject).map((salt) => airOver(salt, pressure));
}

function airOver({ celsius, relativeHumidity }: CheckSalt, pressure: number): AirState {
  return airOfHumidity(celsius, relativeHumidity, pressure);
}

/** Each salt once at each temperature. */
function saltsOf({ points }: Pick<ChartSubject, 'points'>): readonly CheckSalt[] {
  const salts = points.flatMap(saltsOfPoint);
  return [...new Map(salts.map((salt) => [`${salt.name} ${salt.celsius}`, salt])).values()];
}

/** Once for a point: its plan asks for the humidity at work. */
const saltsOfPoint = remembered((point: PointEvaluation): readonly CheckSalt[] => {
  const plan = saltPlan(point);
  return (plan?.salts ?? []).flatMap(({ id, humidity }): readonly CheckSalt[] => {
    if (plan === undefined || !humidity.ok) return [];
    const { relativeHumidity } = humidity.value;
    return [{ name: id, celsius: plan.at.value.value, relativeHumidity, point }];
  });
});

function diamond(x: number, y: number) {
  const corners = [
    [x, y - 5],
    [x + 5, y],
    [x, y + 5],
    [x - 5, y],
  ] as const;
  return polygon(corners, { class: 'dot' });
}
