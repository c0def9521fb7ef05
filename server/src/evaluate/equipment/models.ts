/** The equipment models of a site's kits, by id. */
import type { Entries, KitModel } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type {
  HumidityProbeModel,
  ReceiverModel,
  TemperatureProbeModel,
  TransmitterModel,
} from '../../model/model-types.generated.ts';
import type { Origin } from '../../syntax/nodes.ts';

/** A model with the kit file that holds it. */
export interface ModelRef<Model> {
  readonly id: string;
  readonly file: string;
  readonly keyOrigin: Origin;
  /** Absent where the entry cannot be read. */
  readonly model: Located<Model> | undefined;
}

export interface LoadedKit {
  readonly file: string;
  readonly kit: KitModel;
}

export type Models<Model> = ReadonlyMap<string, ModelRef<Model>>;

export interface ModelCatalogue {
  readonly humidityProbes: Models<HumidityProbeModel>;
  readonly temperatureProbes: Models<TemperatureProbeModel>;
  readonly transmitters: Models<TransmitterModel>;
  readonly receivers: Models<ReceiverModel>;
  /** Ids that two kits give: both places. */
  readonly conflicts: readonly {
    readonly id: string;
    readonly first: ModelRef<unknown>;
    readonly second: ModelRef<unknown>;
  }[];
  /** False where a kit could not be read, so that an unknown id may stand in it. */
  readonly complete: boolean;
}

/** Joins the kits of a site in the order named; of two models with one id the first counts. */
export function catalogueOf(kits: readonly LoadedKit[], complete: boolean): ModelCatalogue {
  const conflicts: { id: string; first: ModelRef<unknown>; second: ModelRef<unknown> }[] = [];
  const join = <Model>(pick: (kit: KitModel) => Entries<Model>): Models<Model> => {
    const models = new Map<string, ModelRef<Model>>();
    for (const { file, kit } of kits) {
      for (const [id, entry] of pick(kit)) {
        const ref = { id, file, keyOrigin: entry.keyOrigin, model: entry.located };
        const first = models.get(id);
        if (first === undefined) models.set(id, ref);
        else conflicts.push({ id, first, second: ref });
      }
    }
    return models;
  };
  return {
    humidityProbes: join((kit) => kit.humidityProbes),
    temperatureProbes: join((kit) => kit.temperatureProbes),
    transmitters: join((kit) => kit.transmitters),
    receivers: join((kit) => kit.receivers),
    conflicts,
    complete,
  };
}
