/** Where each report of a point takes its air temperature from. */
import type { Located } from '../../model/located.ts';
import type { Point, Report } from '../../model/model-types.generated.ts';
import type { Entry } from '../../model/read-file.ts';
import { type QuantityName, quantityInfo } from '../../quantity/quantities.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import { isUnread } from '../facts/unread.ts';
import type { HeaterUse } from './heater.ts';

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
  /** A source is written and cannot be read, or the heater cannot. */
  | { readonly kind: 'unread' }
  /** Unheated, the probe's own temperature is that of the air. */
  | { readonly kind: 'own-head' }
  /** The heater is on and nothing is assigned. */
  | { readonly kind: 'unassigned'; readonly probeThere: boolean }
  | { readonly kind: 'air-temperature-probe' }
  /** The point's own probe is named, and it has none. */
  | { readonly kind: 'no-such-probe' }
  | { readonly kind: 'heated-head' }
  | { readonly kind: 'other-point'; readonly other: OtherPoint }
  /** Another point's probe is named, and it has none. */
  | { readonly kind: 'other-without-probe'; readonly other: OtherPoint }
  | { readonly kind: 'fixed'; readonly celsius: number };

export function resolveSource(
  quantity: QuantityName,
  report: Located<Report>,
  entry: Entry<Point>,
  heater: HeaterUse,
  otherPoint: (tag: string) => OtherPoint,
): ResolvedSource {
  if (!quantityInfo(quantity).needsAirTemperature) return { kind: 'not-needed' };
  const source = report.value.airTemperature?.value;
  const probeThere = hasAirTemperatureProbe(entry);
  switch (source?.kind) {
    case undefined:
      if (!heater.known || isUnread(report, 'air-temperature', source)) return { kind: 'unread' };
      if (heater.on) return { kind: 'unassigned', probeThere };
      return {
        kind: entry.located?.value.humidityProbe === undefined && probeThere ? 'air-temperature-probe' : 'own-head',
      };
    case 'air-temperature-probe':
      return { kind: probeThere ? 'air-temperature-probe' : 'no-such-probe' };
    case 'humidity-probe':
      return { kind: heater.on ? 'heated-head' : 'own-head' };
    case 'point': {
      const other = otherPoint(source.tag);
      const without = other.entry?.located !== undefined && !other.entry.broken && !hasAirTemperatureProbe(other.entry);
      return { kind: without ? 'other-without-probe' : 'other-point', other };
    }
    case 'fixed':
      return { kind: 'fixed', celsius: source.temperature.value };
  }
}

/** A probe that is there with something unreadable in it is there. */
function hasAirTemperatureProbe({ located }: Entry<Point>): boolean {
  const probe = located?.value.airTemperatureProbe;
  return probe !== undefined || isUnread(located, 'air-temperature-probe', probe);
}
