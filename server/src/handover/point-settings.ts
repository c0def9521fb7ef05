/** What can be set at the instruments of a point, each by its dotted path, with what the site file says of it. */

import { isUnread } from '../evaluate/facts/unread.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { analogueRange } from '../evaluate/resolved/signal-use.ts';
import type { Located } from '../model/located.ts';
import type { Alarm, Report, Signal, SiteDefaults } from '../model/model-types.generated.ts';
import { childSchema, SCHEMAS, type SchemaNode } from '../model/schema.ts';
import { isQuantityName, type QuantityName } from '../quantity/quantities.ts';
import type { SettingValue } from './setting-value.ts';

export interface PointSetting {
  /** `heater`, `relative-humidity.air-temperature`, `AO1.span` */
  readonly path: string;
  /** Of the key in the site file, which the instrument is read by too. */
  readonly schema: SchemaNode;
  /** That spans, limits and tolerances speak of. */
  readonly quantity: QuantityName | undefined;
  /** What the site file says. */
  readonly given: Located<SettingValue> | undefined;
  /** What holds where it says nothing. */
  readonly builtIn: SettingValue | undefined;
  /** Where the site file would say it. */
  readonly map: Located<unknown>;
  readonly key: string;
  /** What stands behind the key, from what the instrument says. */
  readonly written: (text: string) => string;
}

export function pointSettings(view: PointEvaluation): readonly PointSetting[] {
  const { signals, alarms, reports } = view.point;
  const settings = [
    ...probeSettings(view),
    ...[...(reports?.value ?? [])].flatMap(([name, report]) => reportSettings(name, report, view)),
    ...[...(signals?.value ?? [])].flatMap(([name, signal]) => signalSettings(name, signal, view)),
    ...[...(alarms?.value ?? [])].flatMap(([name, alarm]) => alarmSettings(name, alarm)),
  ];
  return settings.filter(({ path }, index) => settings.findIndex((other) => other.path === path) === index);
}

/** Keys of one map with what the site file says of each, and what holds where it says nothing. */
type Values = Readonly<
  Record<string, readonly [given: Located<SettingValue> | undefined, builtIn?: SettingValue | undefined]>
>;

interface Holder {
  readonly map: Located<unknown>;
  /** From the point to the map. */
  readonly keys: readonly string[];
  readonly kind?: string;
  /** Stands before the key in the path. */
  readonly name: string;
  readonly quantity?: QuantityName | undefined;
}

function settingsOf({ map, keys, kind, name, quantity }: Holder, values: Values): readonly PointSetting[] {
  return Object.entries(values).map(([key, [given, builtIn]]) => ({
    path: `${name}.${key}`,
    schema: schemaOfPoint([...keys, key], kind),
    quantity,
    given,
    builtIn: isUnread(map, key, given) ? undefined : builtIn,
    map,
    key,
    written: (text) => text,
  }));
}

function schemaOfPoint(keys: readonly string[], kind: string | undefined): SchemaNode {
  const path = ['points', 'TAG', ...keys];
  return path.reduce<SchemaNode>((schema, key) => childSchema('site', schema, key, kind) ?? {}, SCHEMAS.site);
}

function probeSettings({ point }: PointEvaluation): readonly PointSetting[] {
  const { humidityProbe, airTemperatureProbe, transmitter } = point;
  const serial = (map: typeof humidityProbe | typeof airTemperatureProbe | typeof transmitter, name: string) =>
    map === undefined ? [] : settingsOf({ map, keys: [name], name }, { serial: [map.value.serial] });
  return [
    ...heaterSettings(humidityProbe),
    ...serial(humidityProbe, 'humidity-probe'),
    ...serial(airTemperatureProbe, 'air-temperature-probe'),
    ...serial(transmitter, 'transmitter'),
  ];
}

/** The mode of the heater goes by `heater` alone; a point without a heater entry has it off. */
function heaterSettings(probe: PointEvaluation['point']['humidityProbe']): readonly PointSetting[] {
  if (probe === undefined) return [];
  const { heater } = probe.value;
  const keys = ['humidity-probe', 'heater'];
  const mode = { path: 'heater', schema: schemaOfPoint([...keys, 'mode'], undefined), quantity: undefined };
  if (heater === undefined) {
    const written = (text: string): string => `{mode: ${text}}`;
    const builtIn = isUnread(probe, 'heater', heater) ? undefined : 'off';
    return [{ ...mode, given: undefined, builtIn, map: probe, key: 'heater', written }];
  }
  return [
    { ...mode, given: heater.value.mode, builtIn: undefined, map: heater, key: 'mode', written: (text) => text },
    ...settingsOf({ map: heater, keys, name: 'heater' }, { rise: [heater.value.rise] }),
  ];
}

function reportSettings(name: string, map: Located<Report>, { heater }: PointEvaluation): readonly PointSetting[] {
  const quantity = isQuantityName(name) ? name : undefined;
  const { airTemperature, pressure, atPressure } = map.value;
  const ownHead = heater.known && !heater.on ? ({ kind: 'humidity-probe' } as const) : undefined;
  return settingsOf(
    { map, keys: ['reports', name], name, quantity },
    { 'air-temperature': [airTemperature, ownHead], pressure: [pressure], 'at-pressure': [atPressure] },
  );
}

function signalSettings(name: string, map: Located<Signal>, { settings }: PointEvaluation): readonly PointSetting[] {
  const { kind, quantity } = map.value;
  const holder = { map, keys: ['signals', name], kind, name, quantity: quantity?.value };
  return settingsOf(holder, { quantity: [quantity], ...valuesOfSignal(map, settings.header?.defaults?.value) });
}

function valuesOfSignal(signal: Located<Signal>, defaults: SiteDefaults | undefined): Values {
  const { value } = signal;
  const usual = analogueRange({ located: signal });
  switch (value.kind) {
    case 'current-loop':
      return {
        current: [value.current, usual && { ...usual, dimension: 'current' }],
        span: [value.span],
        'on-fault': [value.onFault, defaults?.loopOnFault?.value],
      };
    case 'voltage':
      return { voltage: [value.voltage, usual && { ...usual, dimension: 'voltage' }], span: [value.span] };
    case 'register':
      return {
        device: [value.device, defaults?.registerDevice?.value],
        address: [value.address],
        format: [value.format, defaults?.registerFormat?.value],
        scale: [value.scale],
        'byte-order': [value.byteOrder, defaults?.registerByteOrder?.value],
      };
  }
}

function alarmSettings(name: string, map: Located<Alarm>): readonly PointSetting[] {
  const { quantity, above, below, clear, delay } = map.value;
  return settingsOf(
    { map, keys: ['alarms', name], name, quantity: quantity?.value },
    { quantity: [quantity], above: [above], below: [below], clear: [clear], delay: [delay] },
  );
}
