/** How far the pressure that a report computes with may be off. */
import { showQuantity } from '../../quantity/format-quantity.ts';
import { WEATHER_PRESSURE } from '../air/pressure-effect.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { Measurement } from './measurement.ts';
import { limitsSource, type UncertaintySource } from './uncertainty-source.ts';

/**
 * A pressure given as one absolute value is taken as known. Of a range the middle is taken, or what the report itself
 * gives, and the state lies off it. A pressure that is only that of the altitude, or gauge, moves with the weather.
 */
export function pressureSources(space: SpaceEvaluation, { ownPressure }: Measurement): readonly UncertaintySource[] {
  const { low, high, source, input } = space.pressure;
  if (source !== 'given') return ownPressure === undefined ? [weather(space)] : [];
  const taken = ownPressure ?? (low + high) / 2;
  const isGauge = space.located.value.pressure?.value.gauge === true;
  const offMiddle: UncertaintySource = {
    kind: 'pressure',
    enters: 'pressure',
    statedAt: ({ state }) => ({ halfWidth: Math.abs(state.pressure - taken), statedAs: 'rectangular' }),
    inputsAt: () => [{ ...input, text: `${input.text}, computed with ${showQuantity(taken, 'pressure')}` }],
  };
  return [...(low === taken && high === taken ? [] : [offMiddle]), ...(isGauge ? [weather(space)] : [])];
}

function weather({ pressure }: SpaceEvaluation): UncertaintySource {
  const text = `${pressure.input.text} ± ${showQuantity(WEATHER_PRESSURE, 'pressure')} with the weather`;
  return limitsSource('weather', 'pressure', WEATHER_PRESSURE, [{ ...pressure.input, text }]);
}
