/** How the probes of a point are mounted, and edits of it. */
import type { KnownFact } from '../../evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { ThermometerKind } from '../../evaluate/resolved/thermometer.ts';
import type { Located } from '../../model/located.ts';
import type { AirTemperatureProbeMounting, HumidityProbeMounting } from '../../model/model-types.generated.ts';
import { writeQuantity } from '../../quantity/format-quantity.ts';
import { appendPair, type PartEdit, replaceScalar } from '../../syntax/edit.ts';

export const THERMOMETERS: readonly ThermometerKind[] = ['air-temperature-probe', 'own-head'];

/** As messages call the probe that a thermometer sits in. */
export function probeWords(thermometer: ThermometerKind): string {
  return thermometer === 'own-head' ? 'humidity probe' : 'air-temperature probe';
}

export function mountingOf(
  { point }: PointEvaluation,
  thermometer: ThermometerKind,
): Located<HumidityProbeMounting | AirTemperatureProbeMounting> | undefined {
  return thermometer === 'own-head' ? point.humidityProbe?.value.mounting : point.airTemperatureProbe?.value.mounting;
}

/** Sets a length of a map to that of a fact, whether the map has it yet or not. */
export function setLength(
  map: Located<unknown>,
  key: string,
  present: Located<unknown> | undefined,
  wanted: KnownFact,
): PartEdit | undefined {
  const text = writeQuantity(wanted.value, wanted.dimension);
  return present === undefined ? appendPair(map.cursor, key, text) : replaceScalar(present.cursor, text);
}
