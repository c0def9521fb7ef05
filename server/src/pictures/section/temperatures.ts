/** The colours of temperatures in a section, from the coldest to the warmest of it, and the key to them. */
import type { MarkupElement } from '../../base/markup.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { label, line, rectangle, type XY } from '../svg.ts';
import type { Section } from './section.ts';
import { HEAT_STEPS } from './style.ts';

export interface TemperatureScale {
  readonly lowCelsius: number;
  readonly highCelsius: number;
}

/** Undefined where no temperature of a stem is known. */
export function temperatureScale({ humidityProbe, airTemperatureProbe }: Section): TemperatureScale | undefined {
  const temperatures = [humidityProbe.profile, airTemperatureProbe?.profile].flatMap((profile) => {
    if (profile === undefined) return [];
    const ends = [profile.celsiusAt(0), profile.celsiusAt(profile.length)];
    return profile.headCelsius === undefined ? ends : [...ends, profile.headCelsius];
  });
  if (temperatures.length === 0) return undefined;
  return { lowCelsius: Math.min(...temperatures), highCelsius: Math.max(...temperatures) };
}

export function heatClass({ lowCelsius, highCelsius }: TemperatureScale, celsius: number): string {
  const share = highCelsius > lowCelsius ? (celsius - lowCelsius) / (highCelsius - lowCelsius) : 1;
  return `heat-${Math.min(HEAT_STEPS, Math.max(1, Math.ceil(share * HEAT_STEPS)))}`;
}

const KEY = { width: 180, height: 10 };

/** @param at its left upper corner */
export function drawTemperatureKey(
  scale: TemperatureScale,
  dewPointCelsius: number | undefined,
  [x, y]: XY,
): readonly MarkupElement[] {
  const { lowCelsius, highCelsius } = scale;
  const steps = Array.from({ length: HEAT_STEPS }, (_, step) => {
    const [from, to] = [x + (step / HEAT_STEPS) * KEY.width, x + ((step + 1) / HEAT_STEPS) * KEY.width];
    return rectangle([from, y], [to, y + KEY.height], { class: `heat-${step + 1}` });
  });
  const ends = [
    label([x - 6, y + KEY.height], showQuantity(lowCelsius, 'temperature'), { class: 'end' }),
    label([x + KEY.width + 6, y + KEY.height], showQuantity(highCelsius, 'temperature')),
  ];
  const isOnScale = dewPointCelsius !== undefined && dewPointCelsius > lowCelsius && dewPointCelsius < highCelsius;
  if (!isOnScale) return [...steps, ...ends];
  const at = x + ((dewPointCelsius - lowCelsius) / (highCelsius - lowCelsius)) * KEY.width;
  return [
    ...steps,
    ...ends,
    line([at, y - 4], [at, y + KEY.height + 4], { class: 'edge' }),
    label([at, y - 8], `dew point ${showQuantity(dewPointCelsius, 'temperature')}`, { class: 'middle' }),
  ];
}
