/** What the humidity sensor makes uncertain: its accuracy, its drift since the last check, its own temperature. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Located } from '../../model/located.ts';
import type { AccuracyRow, HumidityProbeModel } from '../../model/model-types.generated.ts';
import { SATURATION_TOLERANCE } from '../../physics/air/state.ts';
import type { StatedAs } from '../../physics/metrology/standard-uncertainty.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { ModelRef } from '../equipment/models.ts';
import { quantityInput } from '../facts/inputs.ts';
import { isUnread } from '../facts/unread.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import type { Measurement, SensedState } from './measurement.ts';
import { type GatheredSources, limitsSource, type UncertaintySource } from './uncertainty-source.ts';

/** The sources of a report that rests on the humidity sensor, or in words what its kit does not state. */
export function sensorSources(resolved: ResolvedPoint, measurement: Measurement): Outcome<GatheredSources, string> {
  const ref = resolved.humidityProbeModel;
  const model = ref?.model?.value;
  if (ref === undefined || model === undefined) return fail('no kit describes the model of the humidity probe');
  const temperature = temperatureSource(ref, model);
  if (temperature === undefined && !isFreeOfSensorTemperature(measurement))
    return fail(`the kit does not say how well the model ${ref.id} knows the temperature of its sensor`);
  if (measurement.quantity === 'air-temperature')
    return succeed({ sources: temperature === undefined ? [] : [temperature], leftOut: [] });
  const accuracy = accuracySource(ref, model, resolved);
  if (accuracy === undefined) return fail(`the kit gives no accuracy for the model ${ref.id}`);
  const drift = driftSource(ref, model, resolved);
  return succeed({
    sources: [accuracy, ...(temperature === undefined ? [] : [temperature]), ...(drift.ok ? [drift.value] : [])],
    leftOut: drift.ok ? [] : [drift.problem],
  });
}

/** Read and computed with one temperature, relative humidity does not depend on how well that is known. */
function isFreeOfSensorTemperature({ quantity, airIsSensor }: Measurement): boolean {
  return quantity === 'relative-humidity' && airIsSensor;
}

type ProbeRef = ModelRef<HumidityProbeModel>;

function temperatureSource({ id, file }: ProbeRef, model: HumidityProbeModel): UncertaintySource | undefined {
  if (model.headTemperature === undefined) return undefined;
  const { value, origin } = model.headTemperature;
  const text = `± ${showQuantity(value.value, 'temperature-difference')}`;
  const input = { label: `sensor temperature of ${id}`, text, file, origin };
  return limitsSource('sensor-temperature', 'sensor-temperature', value.value, [input]);
}

/** The drift over one interval of checks, or in words why it is not counted. */
function driftSource(
  { id, file }: ProbeRef,
  { drift }: HumidityProbeModel,
  { point }: ResolvedPoint,
): Outcome<UncertaintySource, string> {
  const interval = point.checks?.value.interval;
  if (drift === undefined) return fail(`the drift of ${id}, which the kit does not give`);
  if (interval === undefined) return fail(`the drift of ${id}, for want of an interval of checks`);
  const halfWidth = drift.value.value * interval.value.value;
  const rate = { label: `drift of ${id}`, text: showQuantity(drift.value.value, 'humidity-drift') };
  return succeed(
    limitsSource('sensor-drift', 'sensor-humidity', halfWidth, [
      { file, origin: drift.origin, ...rate },
      { label: 'interval of checks', text: showQuantity(interval.value.value, 'time'), origin: interval.origin },
    ]),
  );
}

function accuracySource(
  { id, file }: ProbeRef,
  { accuracy }: HumidityProbeModel,
  { heater, settings }: ResolvedPoint,
): UncertaintySource | undefined {
  const rows = accuracy?.value.flatMap((row) => usableRow(row, settings.coverage.value)) ?? [];
  if (accuracy === undefined || rows.length === 0) return undefined;
  const { origin } = accuracy;
  // What a heated sensor sees, and so the row that holds and what it weighs, follows from the rise.
  const warming = quantityInput('heater rise', heater.rise);
  return {
    kind: 'sensor-accuracy',
    enters: 'sensor-humidity',
    ...(rows.length > 1 ? { rowAt: (sensed: SensedState) => numberOfRow(rows, sensed) } : {}),
    statedAt: (sensed) => rows[numberOfRow(rows, sensed)],
    inputsAt: (sensed) => [
      { label: `accuracy of ${id}`, text: wordsOfRow(rows[numberOfRow(rows, sensed)]), file, origin },
      ...warming,
    ],
  };
}

interface UsableRow {
  readonly row: AccuracyRow;
  readonly halfWidth: number;
  readonly statedAs: StatedAs;
}

/** A row that holds for something unreadable is left out: it must not hold for all. */
function usableRow(located: Located<AccuracyRow>, coverageOfSite: number): readonly UsableRow[] {
  const row = located.value;
  const unread = isUnread(located, 'when', row.when) || isUnread(located, 'temperature', row.temperature);
  if (unread || isUnread(located, 'coverage', row.coverage)) return [];
  const figure = row.relativeHumidity?.value.value;
  const coverage = row.coverage?.value ?? coverageOfSite;
  if (figure === undefined || (typeof coverage === 'number' && coverage <= 0)) return [];
  const statedAs = typeof coverage === 'number' ? { coverageFactor: coverage } : 'rectangular';
  return [{ row, halfWidth: figure, statedAs }];
}

function wordsOfRow(usable: UsableRow | undefined): string {
  if (usable === undefined) return 'none';
  const { row, halfWidth, statedAs } = usable;
  const range = row.when?.value;
  const where = range === undefined ? '' : ` at ${showRange(range.low, range.high, 'relative-humidity')}`;
  const meaning = typeof statedAs === 'object' ? `k = ${statedAs.coverageFactor}` : 'limits';
  return `± ${showQuantity(halfWidth, 'relative-humidity')}${where} (${meaning})`;
}

/** Of the rows that hold for what the sensor sees, the number of the one with the smallest figure; -1 where none holds. */
function numberOfRow(rows: readonly UsableRow[], { sensorHumidity, sensorCelsius }: SensedState): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let number = 0; number < rows.length; number++) {
    const usable = rows[number];
    if (usable === undefined || usable.halfWidth >= least) continue;
    const { when, temperature } = usable.row;
    const holds =
      (when === undefined || isWithin(sensorHumidity, when.value)) &&
      (temperature === undefined || isWithin(sensorCelsius, temperature.value));
    if (holds) [best, least] = [number, usable.halfWidth];
  }
  return best;
}

/** The ends belong to a row, the rounding of a computed value included. */
function isWithin(value: number, { low, high }: { readonly low: number; readonly high: number }): boolean {
  return value >= low - SATURATION_TOLERANCE && value <= high + SATURATION_TOLERANCE;
}
