/** What a dew point below 0 °C would be as a frost point, for reports, spans and limits. */

import { valueIfOk } from '../../base/outcome.ts';
import { frostPointOfVapour } from '../../physics/air/dew-point.ts';
import { saturatedVapourPressure } from '../../physics/air/saturated-vapour.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import type { SpacePressure } from '../air/space-pressure.ts';
import type { Computed, FamilyDeclaration } from '../facts/declared-fact.ts';
import { derivationOf } from '../facts/quantity-value.ts';
import { alarmFact, inSpace, signalFact } from '../resolved/point-fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

/** An end of a span or a limit that lies below 0 °C dew point. */
export interface LimitBelowZero {
  readonly kind: 'signal' | 'alarm';
  readonly name: string;
  readonly celsius: number;
  readonly origin: Origin;
}

export function limitsBelowZero({ point }: ResolvedPoint): readonly LimitBelowZero[] {
  const limits: LimitBelowZero[] = [];
  for (const [name, { value: signal }] of point.signals?.value ?? []) {
    if (signal.kind === 'register' || signal.quantity?.value !== 'dew-point' || signal.span === undefined) continue;
    const { value, origin } = signal.span;
    if (value.low < 0) limits.push({ kind: 'signal', name, celsius: value.low, origin });
  }
  for (const [name, { value: alarm }] of point.alarms?.value ?? []) {
    const limit = alarm.below ?? alarm.above;
    if (alarm.quantity?.value !== 'dew-point' || limit === undefined) continue;
    const celsius = limit.value.value;
    if (celsius < 0) limits.push({ kind: 'alarm', name, celsius, origin: limit.origin });
  }
  return limits;
}

export const signalFrostPoint = signalFact('frost-point', frostPointOf('signal'));
export const alarmFrostPoint = alarmFact('frost-point', frostPointOf('alarm'));

function frostPointOf(kind: LimitBelowZero['kind']): FamilyDeclaration<ResolvedPoint, string, 'temperature'> {
  return {
    title: (name) => `frost point at the lowest dew point of ${kind} ${name}`,
    dimension: 'temperature',
    compute: inSpace((point, { pressure }, name) => {
      const limit = limitsBelowZero(point).find((candidate) => candidate.kind === kind && candidate.name === name);
      return limit === undefined ? undefined : frostPointAt(limit.celsius, pressure);
    }),
  };
}

function frostPointAt(celsius: number, pressure: SpacePressure): Computed {
  const vapourPressure = saturatedVapourPressure(celsius, pressure.low, 'water');
  const value = valueIfOk(frostPointOfVapour(vapourPressure, pressure.low));
  const { relation, formulas } = derivationOf('frost-point');
  return {
    value,
    ...(value === undefined ? { missing: 'the air is too dry for one' } : {}),
    derivation: () => ({
      inputs: [{ label: 'dew point', text: showQuantity(celsius, 'temperature') }, pressure.input],
      relation: `e = f(td, p) · ew(td); ${relation}`,
      formulas: [...new Set([...derivationOf('dew-point').formulas, ...formulas])],
    }),
  };
}
