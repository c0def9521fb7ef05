/** What a dew point below 0 °C would be as a frost point, for reports, spans and limits. */

import { valueIfOk } from '../../base/outcome.ts';
import { exceeds } from '../../base/rounding.ts';
import { frostPointOfVapour } from '../../physics/air/dew-point.ts';
import { saturatedVapourPressure } from '../../physics/air/saturated-vapour.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { type Fact, isKnown } from '../facts/fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import type { ResolvedPoint } from '../point.ts';
import { quantityExtreme, type SpaceEvaluation } from '../space.ts';

/** An end of a span or a limit that lies below 0 °C dew point. */
export interface LimitBelowZero {
  readonly kind: 'signal' | 'alarm';
  readonly name: string;
  readonly celsius: number;
  readonly origin: Origin;
  /** The first part of the ids of its facts. */
  readonly path: string;
}

export function limitsBelowZero({ point }: ResolvedPoint): readonly LimitBelowZero[] {
  const limits: LimitBelowZero[] = [];
  for (const [name, { value: signal }] of point.signals?.value ?? []) {
    if (signal.kind === 'register' || signal.quantity?.value !== 'dew-point' || signal.span === undefined) continue;
    const { value, origin } = signal.span;
    if (value.low < 0) limits.push({ kind: 'signal', name, celsius: value.low, origin, path: `signal/${name}` });
  }
  for (const [name, { value: alarm }] of point.alarms?.value ?? []) {
    const limit = alarm.below ?? alarm.above;
    if (alarm.quantity?.value !== 'dew-point' || limit === undefined) continue;
    const celsius = limit.value.value;
    if (celsius < 0) limits.push({ kind: 'alarm', name, celsius, origin: limit.origin, path: `alarm/${name}` });
  }
  return limits;
}

export function frostPointFacts(resolved: ResolvedPoint, space: SpaceEvaluation): readonly Fact[] {
  const reported = resolved.reports.some(({ quantity }) => quantity === 'dew-point');
  const lowest = quantityExtreme(space, 'dew-point', 'lowest');
  const ofReport =
    reported && isKnown(lowest) && exceeds(0, lowest.value) ? [quantityExtreme(space, 'frost-point', 'lowest')] : [];
  return [...ofReport, ...limitsBelowZero(resolved).map((limit) => frostPointOf(limit, space))];
}

function frostPointOf({ kind, name, path, celsius }: LimitBelowZero, { pressure }: SpaceEvaluation): Fact {
  const vapourPressure = saturatedVapourPressure(celsius, pressure.low, 'water');
  const { relation, formulas } = derivationOf('frost-point');
  const value = valueIfOk(frostPointOfVapour(vapourPressure, pressure.low));
  return {
    id: `${path}/frost-point`,
    title: `frost point at the lowest dew point of ${kind} ${name}`,
    dimension: 'temperature',
    value,
    ...(value === undefined ? { missing: 'the air is too dry for one' } : {}),
    inputs: [{ label: 'dew point', text: showQuantity(celsius, 'temperature') }, pressure.input],
    relation: `e = f(td, p) · ew(td); ${relation}`,
    formulas: [...new Set([...derivationOf('dew-point').formulas, ...formulas])],
    notes: [],
  };
}
