/** What keeps a thermometer from reading the air temperature, as sources of a budget. */
import { remembered } from '../../base/remembered.ts';
import type { AirState } from '../../physics/air/moist-air.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { PhaseEvaluation } from '../air/phase.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import {
  AIR_TEMPERATURE_ERRORS,
  type AirTemperatureError,
  type AirTemperatureErrors,
  airTemperatureErrors,
} from '../air-temperature/errors.ts';
import type { FactInput } from '../facts/fact.ts';
import type { Given } from '../facts/given.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import type { ThermometerKind } from '../resolved/thermometer.ts';
import type { SensedState } from './measurement.ts';
import { type GatheredSources, type SourceKind, sourceInfo, type UncertaintySource } from './uncertainty-source.ts';

/** Nobody corrects them, and their sign is not relied on: each is taken as limits of its computed size to either side. */
export const READING_ERRORS_NOTE =
  'Errors of the air temperature that can be computed are not corrected: each counts as limits of its size to either side.';

const SIZES: Readonly<Record<AirTemperatureError, (errors: AirTemperatureErrors) => Given<number>>> = {
  'stem-conduction': ({ stemConduction }) => stemConduction,
  radiation: ({ radiation }) => radiation,
  // Half of what the estimate may be at the most: limits from none at all to twice the estimate are as wide.
  'head-warming': ({ warming }) => (warming.ok ? { ok: true, value: warming.value.estimate } : warming),
  gradient: ({ gradient }) => gradient,
  lag: ({ lag }) => lag.thermometer,
};

/** The sources for one thermometer of a point in each phase. What one report has computed, the next does not again. */
export function readingErrorSources(
  resolved: ResolvedPoint,
  space: SpaceEvaluation,
  kind: ThermometerKind,
): (phase: PhaseEvaluation) => GatheredSources {
  const errorsIn = airTemperatureErrors(resolved, space, kind);
  const place = placeOf(resolved, kind);
  return remembered(({ envelope, sampled }) => {
    const known = new Map<AirState, AirTemperatureErrors>();
    const errorsAt = (state: AirState): AirTemperatureErrors => {
      const errors = known.get(state) ?? errorsIn(state, envelope);
      known.set(state, errors);
      return errors;
    };
    const anyState = sampled?.samples[0]?.state;
    const sources: UncertaintySource[] = [];
    const leftOut: string[] = [];
    if (anyState === undefined) return { sources, leftOut };
    for (const source of AIR_TEMPERATURE_ERRORS) {
      const errorOf = SIZES[source];
      const there = errorOf(errorsAt(anyState));
      if (there.ok) sources.push(readingErrorSource(source, ({ state }) => errorOf(errorsAt(state)), place));
      else leftOut.push(`the ${sourceInfo(source).title} (${there.problem})`);
    }
    return { sources, leftOut };
  });
}

function readingErrorSource(
  kind: SourceKind,
  errorAt: (sensed: SensedState) => Given<number>,
  place: Pick<FactInput, 'origin'>,
): UncertaintySource {
  return {
    kind,
    enters: 'air-temperature',
    statedAt: (sensed) => {
      const error = errorAt(sensed);
      return error.ok ? { halfWidth: error.value, statedAs: 'rectangular' } : undefined;
    },
    inputsAt: (sensed) => {
      const error = errorAt(sensed);
      const text = error.ok ? showQuantity(error.value, 'temperature-difference') : error.problem;
      return [{ label: sourceInfo(kind).title, text, ...place }];
    },
  };
}

/** Where a person would change any of them: at the mounting, else at the probe. */
function placeOf({ point }: ResolvedPoint, kind: ThermometerKind): Pick<FactInput, 'origin'> {
  const probe = kind === 'own-head' ? point.humidityProbe : point.airTemperatureProbe;
  const origin = probe?.value.mounting?.origin ?? probe?.origin;
  return origin === undefined ? {} : { origin };
}
