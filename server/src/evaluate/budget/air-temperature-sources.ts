/** What the air temperature makes uncertain, by where a report takes it from. */
import { fail, type Outcome, succeed } from '../../base/outcome.ts';
import type { Located } from '../../model/located.ts';
import type { TemperatureAccuracy } from '../../model/model-types.generated.ts';
import { platinumTolerance } from '../../physics/metrology/platinum-thermometer.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { ReportEvaluation, ResolvedPoint } from '../resolved/resolved-point.ts';
import type { SensedState } from './measurement.ts';
import { type GatheredSources, limitsSource, type UncertaintySource } from './uncertainty-source.ts';

/**
 * What the thermometer itself adds, or in words why its uncertainty is not known. Where the thermometer is the sensor
 * of the unheated head, that is already counted as the temperature of the sensor.
 */
export function thermometerSources(
  { source, report }: ReportEvaluation,
  resolved: ResolvedPoint,
): Outcome<GatheredSources, string> {
  switch (source.kind) {
    case 'not-needed':
    case 'own-head':
      return succeed({ sources: [], leftOut: [] });
    case 'air-temperature-probe':
      return probeSources(resolved);
    case 'fixed':
      return succeed({ sources: [fixedSource(source.celsius, report.value.airTemperature?.origin)], leftOut: [] });
    case 'other-point':
      return fail(`nothing says how far the air at ${source.other.tag} differs from the air here`);
    case 'heated-head':
      return fail('a heated head does not know the air temperature');
    case 'unassigned':
    case 'no-such-probe':
    case 'other-without-probe':
    case 'unread':
      return fail('nothing measures the air temperature for it');
  }
}

function probeSources({ airTemperatureProbeModel: ref, point }: ResolvedPoint): Outcome<GatheredSources, string> {
  const model = ref?.model?.value;
  if (ref === undefined || model === undefined) return fail('no kit describes the model of the air-temperature probe');
  const { id, file } = ref;
  const { accuracy, drift } = model;
  const interval = point.checks?.value.interval;
  const toleranceAt = accuracy === undefined ? undefined : toleranceOf(accuracy);
  if (accuracy === undefined || toleranceAt === undefined) return fail(`the kit gives no accuracy for the model ${id}`);
  const tolerance: UncertaintySource = {
    kind: 'probe-accuracy',
    enters: 'air-temperature',
    statedAt: ({ state }) => ({ halfWidth: toleranceAt(state.airCelsius), statedAs: 'rectangular' }),
    inputsAt: ({ state }) => {
      const text = `± ${showQuantity(toleranceAt(state.airCelsius), 'temperature-difference')}`;
      return [{ label: `tolerance of ${id}`, text, file, origin: accuracy.origin }];
    },
  };
  if (drift === undefined) return succeed({ sources: [tolerance], leftOut: [] });
  if (interval === undefined)
    return succeed({ sources: [tolerance], leftOut: [`the drift of ${id}, for want of an interval of checks`] });
  const inputs = [
    { label: `drift of ${id}`, text: showQuantity(drift.value.value, 'temperature-drift'), file, origin: drift.origin },
    { label: 'interval of checks', text: showQuantity(interval.value.value, 'time'), origin: interval.origin },
  ];
  const wandered = limitsSource('probe-drift', 'air-temperature', drift.value.value * interval.value.value, inputs);
  return succeed({ sources: [tolerance, wandered], leftOut: [] });
}

/** The tolerance in K at a temperature in °C: that of an IEC 60751 class, or one value for all. */
function toleranceOf({ value }: Located<TemperatureAccuracy | Quantity>): ((celsius: number) => number) | undefined {
  if ('dimension' in value) return () => value.value;
  const grade = value.class?.value;
  return grade === undefined ? undefined : (celsius) => platinumTolerance(grade, celsius);
}

/** The air of a state lies off the fixed value by a known amount that nobody corrects. */
function fixedSource(celsius: number, origin: Located<unknown>['origin'] | undefined): UncertaintySource {
  const offBy = ({ state }: SensedState): number => Math.abs(state.airCelsius - celsius);
  const place = origin === undefined ? {} : { origin };
  return {
    kind: 'fixed-temperature',
    enters: 'air-temperature',
    statedAt: (sensed) => ({ halfWidth: offBy(sensed), statedAs: 'rectangular' }),
    inputsAt: () => [{ label: 'air temperature taken', text: showQuantity(celsius, 'temperature'), ...place }],
  };
}
