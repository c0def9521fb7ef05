/** What holds for a whole site: its air pressure, its surroundings, and the limits its points are held to. */
import type { Located } from '../../model/located.ts';
import type { CalendarDate, Severity, SiteHeader } from '../../model/model-types.generated.ts';
import { pressureAtAltitude } from '../../physics/air/standard-atmosphere.ts';
import type { Quantity, QuantityRange } from '../../quantity/quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { isUnread } from './unread.ts';

/** A limit with the place that sets it; the built-in value has none. */
export interface Setting {
  readonly value: number;
  readonly origin?: Origin;
}

export interface SiteSettings {
  readonly id: string | undefined;
  /** The present day. */
  readonly today: CalendarDate;
  /** Pressure of the outdoor air in Pa, from the altitude by ISO 2533; at sea level where no altitude is given. */
  readonly airPressure: Setting;
  readonly altitude: Located<Quantity> | undefined;
  /** True where an altitude is written and cannot be read, or the site's header cannot. */
  readonly altitudeUnread: boolean;
  readonly surroundings: Located<QuantityRange> | undefined;
  readonly sensorHumidityLimit: Setting;
  readonly unheatedHumidityLimit: Setting;
  readonly margin: Setting;
  readonly coverage: Setting;
  readonly ruleSeverities: ReadonlyMap<string, Located<Severity>>;
  readonly header: SiteHeader | undefined;
}

/** The built-in values, as format.md's page of the site file and the schema state them. */
const BUILT_IN = { sensorHumidityLimit: 0.8, unheatedHumidityLimit: 0.9, margin: 2, coverage: 2 } as const;
const NO_SEVERITIES: ReadonlyMap<string, Located<Severity>> = new Map();

/** @param today the present day, `YYYY-MM-DD` */
export function siteSettings(located: Located<SiteHeader> | undefined, today: CalendarDate): SiteSettings {
  const header = located?.value;
  const defaults = header?.defaults?.value;
  const setting = (given: Located<Quantity> | undefined, builtIn: number): Setting =>
    given === undefined ? { value: builtIn } : { value: given.value.value, origin: given.origin };
  const altitude = header?.altitude;
  const airPressure = pressureAtAltitude(altitude?.value.value ?? 0);
  const coverage = defaults?.coverage;
  return {
    id: header?.id?.value,
    today,
    airPressure: { value: airPressure, ...(altitude === undefined ? {} : { origin: altitude.origin }) },
    altitude,
    altitudeUnread: header === undefined || isUnread(located, 'altitude', altitude),
    surroundings: header?.surroundings,
    sensorHumidityLimit: setting(defaults?.sensorHumidityLimit, BUILT_IN.sensorHumidityLimit),
    unheatedHumidityLimit: setting(defaults?.unheatedHumidityLimit, BUILT_IN.unheatedHumidityLimit),
    margin: setting(defaults?.margin, BUILT_IN.margin),
    coverage:
      coverage === undefined ? { value: BUILT_IN.coverage } : { value: coverage.value, origin: coverage.origin },
    ruleSeverities: header?.rules?.value ?? NO_SEVERITIES,
    header,
  };
}
