/** What a pair of readings says of a point: its error, how uncertain both sides are, and whether they agree. */

import type { AirState } from '../../physics/air/moist-air.ts';
import { airState } from '../../physics/air/state.ts';
import { EN_COVERAGE, enNumber } from '../../physics/metrology/decision.ts';
import { AIR_TEMPERATURE_ERRORS } from '../air-temperature/errors.ts';
import { varianceAt } from '../budget/budget.ts';
import type { PreparedReport } from '../budget/uncertainty.ts';
import type { SourceKind } from '../budget/uncertainty-source.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import type { VisitReading } from '../resolved/visit-reading.ts';

export interface ReadingError {
  readonly reading: VisitReading;
  /** What the point showed too much, in the difference of the quantity. */
  readonly error: number;
  /** Expanded uncertainty of what the point showed, at the site's coverage; undefined where its budget is not known. */
  readonly pointUncertainty: number | undefined;
  /** Above 1, either side, the pair disagrees; undefined where one of the uncertainties is not known. */
  readonly enNumber: number | undefined;
}

export function readingError(
  reading: VisitReading,
  prepared: PreparedReport | undefined,
  { coverage, airPressure }: SiteSettings,
): ReadingError {
  const { shown, reference, referenceUncertainty } = reading;
  const pointUncertainty = uncertaintyOfShown(reading, prepared, airPressure.value);
  const toEn = EN_COVERAGE / coverage.value;
  const en =
    pointUncertainty === undefined || referenceUncertainty === undefined
      ? undefined
      : enNumber(shown, pointUncertainty * toEn, reference, referenceUncertainty * toEn);
  return { reading, error: shown - reference, pointUncertainty, enNumber: en };
}

/** What the process adds to a reading does not act on a probe that is out of it, over a salt or in a laboratory. */
const OF_THE_PROCESS: ReadonlySet<SourceKind> = new Set([...AIR_TEMPERATURE_ERRORS, 'pressure']);

/** In the process the uncertainty is that of the worst corner: nobody writes down the state of the air in full. */
function uncertaintyOfShown(
  reading: VisitReading,
  prepared: PreparedReport | undefined,
  pressure: number,
): number | undefined {
  const worst = prepared?.budgets.worst?.expandedUncertainty;
  const outside = stateOutside(reading, pressure);
  const { measurement, phases = [], terms } = prepared?.sources ?? {};
  if (outside === undefined || measurement === undefined || terms === undefined) return worst;
  const sources = phases[0]?.sources.filter(({ kind }) => !OF_THE_PROCESS.has(kind)) ?? [];
  const rise = reading.heater === 'off' ? 0 : measurement.rise;
  const variance = varianceAt({ ...measurement, rise }, sources, outside);
  return variance === undefined ? worst : terms.coverageFactor * Math.sqrt(variance);
}

/** The air that a probe was held into outside the process, where it is known. */
function stateOutside({ using, atCelsius, quantity, reference }: VisitReading, pressure: number): AirState | undefined {
  if (using === undefined || using === 'reference-instrument' || atCelsius === undefined) return undefined;
  if (quantity === 'air-temperature' || quantity === 'dew-point-at') return undefined;
  const state = airState(atCelsius, pressure, { quantity, value: reference });
  return state.ok ? state.value : undefined;
}
