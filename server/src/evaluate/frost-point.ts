/** What a dew point below 0 °C would be as a frost point, for reports, spans and limits. */
import { valueIfOk } from '../base/outcome.ts';
import { frostPointOfVapour } from '../physics/dew-point.ts';
import { saturatedVapourPressure } from '../physics/saturated-vapour.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { type Fact, isKnown } from './fact.ts';
import type { ResolvedPoint } from './point.ts';
import { derivationOf } from './quantity-value.ts';
import { quantityExtreme, type SpaceEvaluation } from './space.ts';

/** A place that speaks of a dew point below 0 °C: the report, or the span or limit of a signal or alarm. */
export interface BelowZero {
  readonly path: string;
  readonly celsius: number;
}

/** The ends of spans and the limits of alarms that lie below 0 °C dew point. */
export function limitsBelowZero({ point }: ResolvedPoint): readonly BelowZero[] {
  const limits: BelowZero[] = [];
  const add = (path: string, celsius: number | undefined): void => {
    if (celsius !== undefined && celsius < 0) limits.push({ path, celsius });
  };
  for (const [name, { value: signal }] of point.signals?.value ?? []) {
    if (signal.kind !== 'register' && signal.quantity?.value === 'dew-point')
      add(`signals/${name}`, signal.span?.value.low);
  }
  for (const [name, { value: alarm }] of point.alarms?.value ?? []) {
    if (alarm.quantity?.value === 'dew-point') add(`alarms/${name}`, (alarm.below ?? alarm.above)?.value.value);
  }
  return limits;
}

export function frostPointFacts(resolved: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const reported = resolved.reports.some(({ quantity }) => quantity === 'dew-point');
  const lowest = quantityExtreme(space, 'dew-point', 'lowest');
  const ofReport =
    reported && isKnown(lowest) && lowest.value < 0 ? [quantityExtreme(space, 'frost-point', 'lowest')] : [];
  return [...ofReport, ...limitsBelowZero(resolved).map((limit) => frostPointOf(limit, space))];
}

function frostPointOf({ path, celsius }: BelowZero, { pressure }: SpaceEvaluation): Fact {
  const vapourPressure = saturatedVapourPressure(celsius, pressure.low, 'water');
  const { relation, formulas } = derivationOf('frost-point');
  const value = valueIfOk(frostPointOfVapour(vapourPressure, pressure.low));
  return {
    id: `${path}/frost-point`,
    title: `frost point at the lowest dew point of ${path.replace('/', ' ')}`,
    dimension: 'temperature',
    value,
    ...(value === undefined ? { missing: 'the air is too dry for one' } : {}),
    inputs: [{ label: 'dew point', text: showQuantity(celsius, 'temperature') }, pressure.input],
    relation: `e = f(td, p) · ew(td); ${relation}`,
    formulas: [...new Set([...derivationOf('dew-point').formulas, ...formulas])],
    notes: [],
  };
}
