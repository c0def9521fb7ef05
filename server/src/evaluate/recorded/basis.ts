/** What a recording of a space is laid against: its envelopes, its pressure, and how far its sensors are heated. */
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { PointEvaluation } from '../point.ts';
import type { Bound, RecordingBasis, RecordingEnvelope } from './summary.ts';

/** @returns undefined where not every envelope of the space can be read */
export function recordingBasis(space: SpaceEvaluation, points: Iterable<PointEvaluation>): RecordingBasis | undefined {
  if (!space.complete || space.phases.length === 0) return undefined;
  const rises = new Set([0]);
  for (const { space: of, heater } of points) {
    if (of === space && heater.rise !== undefined) rises.add(heater.rise.value.value);
  }
  const { settings, pressure } = space;
  return {
    space: space.id,
    pressure: (pressure.low + pressure.high) / 2,
    envelopes: space.phases.map(({ envelope }) => boundsOf(envelope)),
    rises: [...rises].sort((one, other) => one - other),
    sensorHumidityLimit: settings.sensorHumidityLimit.value,
    unheatedHumidityLimit: settings.unheatedHumidityLimit.value,
  };
}

function boundsOf({ phase, temperature, humidityKey, humidity, speed }: PhaseEnvelope): RecordingEnvelope {
  const quantity = humidityKey === 'humidity' ? 'relative-humidity' : humidityKey;
  const bounds: Bound[] = [
    { quantity: 'air-temperature', low: temperature.value.low, high: temperature.value.high },
    { quantity, low: humidity.value.low, high: humidity.value.high },
  ];
  if (speed !== undefined) bounds.push({ quantity: 'speed', low: speed.value.low, high: speed.value.high });
  return phase === undefined ? { bounds } : { phase, bounds };
}
