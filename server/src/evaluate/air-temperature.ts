/** Where each report of a point takes its air temperature from. */

import type { Point, Report } from '../model/model-types.generated.ts';
import type { Entry } from '../model/read-file.ts';
import { type QuantityName, quantityInfo } from '../quantity/quantity-names.ts';
import type { HeaterUse } from './heater.ts';
import type { SpaceEvaluation } from './space.ts';

/** What one point has to know of another whose air-temperature probe it uses. */
export interface OtherPoint {
  readonly tag: string;
  /** Absent where no such point exists. */
  readonly entry: Entry<Point> | undefined;
  /** Absent where its space is not known. */
  readonly space: SpaceEvaluation | undefined;
}

export type ResolvedSource =
  /** The quantity does not depend on the air temperature. */
  | { readonly kind: 'not-needed' }
  /** Unheated, the probe's own temperature is that of the air. */
  | { readonly kind: 'own-head' }
  /** The heater is on and nothing is assigned. */
  | { readonly kind: 'unassigned'; readonly probeThere: boolean }
  | { readonly kind: 'air-temperature-probe' }
  /** The point's own probe is named, and it has none. */
  | { readonly kind: 'no-such-probe' }
  | { readonly kind: 'heated-head' }
  | { readonly kind: 'other-point'; readonly other: OtherPoint }
  | { readonly kind: 'fixed'; readonly celsius: number };

export function resolveSource(
  quantity: QuantityName,
  report: Report,
  point: Point,
  heater: HeaterUse,
  otherPoint: (tag: string) => OtherPoint,
): ResolvedSource {
  if (!quantityInfo(quantity).needsAirTemperature) return { kind: 'not-needed' };
  const probeThere = point.airTemperatureProbe !== undefined;
  const source = report.airTemperature?.value;
  switch (source?.kind) {
    case undefined:
      return heater.on ? { kind: 'unassigned', probeThere } : { kind: 'own-head' };
    case 'air-temperature-probe':
      return { kind: probeThere ? 'air-temperature-probe' : 'no-such-probe' };
    case 'humidity-probe':
      return { kind: heater.on ? 'heated-head' : 'own-head' };
    case 'point':
      return { kind: 'other-point', other: otherPoint(source.tag) };
    case 'fixed':
      return { kind: 'fixed', celsius: source.temperature.value };
  }
}
