/** What is measured for a report and what makes it uncertain, in every phase of its space. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import { rememberedOf } from '../../base/remembered.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { type SampledEnvelope, sampledAtJumps } from '../air/extreme.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import { rangeEnd } from '../air/quantity-range.ts';
import { reportPressures } from '../air/report-pressures.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { sensorWarming } from '../resolved/heater.ts';
import { completeSpace } from '../resolved/point-fact.ts';
import type { ReportEvaluation, ResolvedPoint } from '../resolved/resolved-point.ts';
import { signalUses } from '../resolved/signal-use.ts';
import { type ThermometerKind, thermometerKindOf } from '../resolved/thermometer.ts';
import { thermometerSources } from './air-temperature-sources.ts';
import type { BudgetTerms } from './budget.ts';
import { type Measurement, sensedState } from './measurement.ts';
import { pressureSources } from './pressure-sources.ts';
import { readingErrorSources } from './reading-error-sources.ts';
import { sensorSources } from './sensor-sources.ts';
import { uncountedOf, worstSignal } from './signal-sources.ts';
import type { GatheredSources, UncertaintySource } from './uncertainty-source.ts';

export interface ReportSources {
  readonly measurement: Measurement;
  readonly phases: readonly PhaseSources[];
  readonly terms: BudgetTerms;
}

export interface PhaseSources extends GatheredSources {
  readonly phase: PhaseEvaluation;
  readonly sampled: SampledEnvelope;
}

/** What two reports with one thermometer need is looked up once. */
const readingErrors = rememberedOf((point: ResolvedPoint, kind: ThermometerKind) => {
  const space = completeSpace(point);
  return space === undefined ? () => NOTHING : readingErrorSources(point, space, kind);
});

const NOTHING: GatheredSources = { sources: [], leftOut: [] };

/** For a report of a point, or in words what is lacking. */
export function reportSources(
  evaluated: ReportEvaluation,
  resolved: ResolvedPoint,
  space: SpaceEvaluation,
): Outcome<ReportSources, string> {
  const { quantity, source } = evaluated;
  const measured = measurementOf(evaluated, resolved);
  if (!measured.ok) return measured;
  const measurement = measured.value;
  const usesSensor = quantity !== 'air-temperature' || measurement.airIsSensor;
  const sensor = usesSensor ? sensorSources(resolved, measurement) : succeed(NOTHING);
  if (!sensor.ok) return sensor;
  const thermometer = thermometerSources(evaluated, resolved);
  if (!thermometer.ok) return thermometer;
  const carriers = signalUses(resolved).filter((signal) => signal.quantity === quantity);
  const signal = worstSignal(carriers, resolved, largestMagnitude(space, evaluated, resolved));
  const uncounted = carriers.flatMap((use) => uncountedOf(use, resolved));
  const everywhere: readonly UncertaintySource[] = [
    ...sensor.value.sources,
    ...thermometer.value.sources,
    ...pressureSources(space, measurement),
    ...(signal?.sources ?? []),
  ];
  const rowAt = everywhere.find((each) => each.rowAt !== undefined)?.rowAt;
  const kind = thermometerKindOf(source);
  const phases = space.phases.flatMap((phase): PhaseSources[] => {
    if (phase.sampled === undefined) return [];
    const errors = kind === undefined ? NOTHING : readingErrors(resolved, kind)(phase);
    const sources = [...everywhere, ...errors.sources];
    const leftOut = [...sensor.value.leftOut, ...thermometer.value.leftOut, ...errors.leftOut, ...uncounted];
    const sampled =
      rowAt === undefined
        ? phase.sampled
        : sampledAtJumps(phase.sampled, (state) => rowAt(sensedState(state, measurement.rise)));
    return [{ phase, sampled, sources, leftOut }];
  });
  const gap = accuracyGap(phases, measurement.rise);
  if (gap !== undefined) return fail(gap);
  const terms = {
    coverageFactor: resolved.settings.coverage.value,
    tolerance: evaluated.report.value.tolerance?.value.value,
    signal: signal?.name,
  };
  return succeed({ measurement, phases, terms });
}

function measurementOf(
  { quantity, report, source }: ReportEvaluation,
  { point, heater, settings }: ResolvedPoint,
): Outcome<Measurement, string> {
  const airIsSensor = source.kind === 'own-head';
  const pressures = reportPressures(report.value, settings);
  const common = {
    quantity,
    airIsSensor,
    ownPressure: pressures.own?.value,
    otherPressure: pressures.other?.value,
  };
  if (quantity === 'air-temperature' && !airIsSensor) return succeed({ rise: 0, ...common });
  const probe = point.humidityProbe?.value;
  if (probe === undefined) return fail('the point has no humidity probe');
  if (probe.mounting?.value.path?.value === 'sample-line')
    return fail('the temperature of the sensor at the end of the sample line is not known');
  const warming = sensorWarming(heater);
  if (warming === undefined) return fail('nothing says how far the heater warms the sensor');
  return succeed({ rise: warming.rise, ...common });
}

function largestMagnitude(
  space: SpaceEvaluation,
  { quantity, report }: ReportEvaluation,
  { settings }: ResolvedPoint,
): number {
  const pressures = reportPressures(report.value, settings);
  const ends = (['lowest', 'highest'] as const).map((end) => rangeEnd(space, quantity, end, pressures).value ?? 0);
  return Math.max(...ends.map(Math.abs));
}

/** In words the first state for which something is not stated: no row of the accuracy table holds there. */
function accuracyGap(phases: readonly PhaseSources[], rise: number): string | undefined {
  for (const { sampled, sources } of phases) {
    for (const { state } of sampled.samples) {
      const sensed = sensedState(state, rise);
      if (sources.every(({ statedAt }) => statedAt(sensed) !== undefined)) continue;
      const humidity = showQuantity(sensed.sensorHumidity, 'relative-humidity');
      const temperature = showQuantity(sensed.sensorCelsius, 'temperature');
      return `the kit states no accuracy for ${humidity} at ${temperature}, which the sensor sees`;
    }
  }
  return undefined;
}
