/** The three kinds of file as typed models. */
import { remembered } from '../base/remembered.ts';
import type { Located } from './located.ts';
import type {
  HumidityProbeModel,
  KitHeader,
  LogColumns,
  Point,
  Reading,
  ReceiverModel,
  Setting,
  SiteHeader,
  Space,
  Step,
  TemperatureProbeModel,
  TransmitterModel,
  VisitHeader,
} from './model-types.generated.ts';
import type { Entry, FileModel } from './read-file.ts';

export type Entries<Value> = ReadonlyMap<string, Entry<Value>>;

export interface SiteModel {
  readonly header: Located<SiteHeader> | undefined;
  readonly spaces: Entries<Space>;
  readonly points: Entries<Point>;
  /** Top-level keys below which an entry may not be seen, because the YAML does not parse there. */
  readonly brokenKeys: ReadonlySet<string>;
}

export interface KitModel {
  readonly header: Located<KitHeader> | undefined;
  readonly humidityProbes: Entries<HumidityProbeModel>;
  readonly temperatureProbes: Entries<TemperatureProbeModel>;
  readonly transmitters: Entries<TransmitterModel>;
  readonly receivers: Entries<ReceiverModel>;
}

export interface VisitModel {
  readonly header: Located<VisitHeader> | undefined;
  readonly steps: Entries<Step>;
  readonly readings: readonly Located<Reading>[];
  readonly settings: readonly Located<Setting>[];
  readonly log: Located<string> | undefined;
  readonly logSpace: Located<string> | undefined;
  readonly logColumns: Located<LogColumns> | undefined;
}

const NO_ENTRIES: ReadonlyMap<string, Entry<never>> = new Map();

export const siteModelOf = remembered(
  (file: FileModel): SiteModel => ({
    header: top(file, 'site'),
    spaces: entries(file, 'spaces'),
    points: entries(file, 'points'),
    brokenKeys: file.brokenKeys,
  }),
);

export const kitModelOf = remembered(
  (file: FileModel): KitModel => ({
    header: top(file, 'kit'),
    humidityProbes: entries(file, 'humidity-probes'),
    temperatureProbes: entries(file, 'temperature-probes'),
    transmitters: entries(file, 'transmitters'),
    receivers: entries(file, 'receivers'),
  }),
);

export const visitModelOf = remembered(
  (file: FileModel): VisitModel => ({
    header: top(file, 'visit'),
    steps: entries(file, 'steps'),
    readings: top<readonly Located<Reading>[]>(file, 'readings')?.value ?? [],
    settings: top<readonly Located<Setting>[]>(file, 'settings')?.value ?? [],
    log: top(file, 'log'),
    logSpace: top(file, 'log-space'),
    logColumns: top(file, 'log-columns'),
  }),
);

/** The lowering follows the schema that the type was generated from, so that the two agree. */
function top<Value>(file: FileModel, key: string): Located<Value> | undefined {
  return file.values.get(key) as Located<Value> | undefined;
}

function entries<Value>(file: FileModel, key: string): Entries<Value> {
  return (file.entries.get(key) ?? NO_ENTRIES) as Entries<Value>;
}
