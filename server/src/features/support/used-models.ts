/** The ids of the models that points use. */
import type { PointEvaluation } from '../../evaluate/point.ts';

export function usedModels(points: Iterable<PointEvaluation>): ReadonlySet<string> {
  const ids = [...points].flatMap(({ humidityProbeModel, airTemperatureProbeModel, transmitterModel, signals }) => {
    const receivers = signals.map((signal) => (signal.kind === 'analogue' ? signal.receiver : undefined));
    const used = [humidityProbeModel, airTemperatureProbeModel, transmitterModel, ...receivers];
    return used.flatMap((ref) => ref?.id ?? []);
  });
  return new Set(ids);
}
