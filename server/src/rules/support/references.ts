/** Every name in a site file that stands for something defined elsewhere, with what there is to name. */
import type { ModelCatalogue, Models } from '../../evaluate/models.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { SALT_NAMES } from '../../evaluate/salt-choices.ts';
import type { KitModel } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type { SiteView } from '../rule.ts';

/** The maps of a kit, by the key of the model and as its file spells it. */
export type ModelKind = 'humidityProbes' | 'temperatureProbes' | 'transmitters' | 'receivers';

export interface Reference {
  readonly to: 'space' | 'point' | 'salt' | ModelKind;
  readonly named: Located<string>;
  /** What may be named; undefined where not all of it is known, so that nothing can be said. */
  readonly known: readonly string[] | undefined;
  /** The tag of the point that names it; absent for the site itself. */
  readonly subject?: string;
}

/** The words that a source of air temperature may be besides a tag. */
const SOURCE_WORDS = ['air-temperature-probe', 'humidity-probe'];

export const MODEL_KINDS: readonly ModelKind[] = ['humidityProbes', 'temperatureProbes', 'transmitters', 'receivers'];

export function isModelKind(to: Reference['to']): to is ModelKind {
  return MODEL_KINDS.some((kind) => kind === to);
}

export function referencesOf(view: SiteView): readonly Reference[] {
  const receiver = view.settings.header?.defaults?.value.receiver;
  return [
    ...(receiver === undefined ? [] : [modelReference('receivers', receiver, view.catalogue)]),
    ...view.points.filter(({ entry }) => !entry.broken).flatMap((point) => referencesOfPoint(point, view)),
  ];
}

/** Whether a kit has a model of this kind and id. */
export function hasModel(kit: KitModel | ModelCatalogue, kind: ModelKind, id: string): boolean {
  return kit[kind].has(id);
}

function referencesOfPoint({ tag, point }: PointEvaluation, view: SiteView): readonly Reference[] {
  const { model, catalogue } = view;
  const spaces = model.brokenKeys.has('spaces') ? undefined : [...model.spaces.keys()];
  const tags = model.brokenKeys.has('points') ? undefined : [...SOURCE_WORDS, ...model.points.keys()];
  const signals = [...(point.signals?.value.values() ?? [])];
  const found: readonly (Reference | undefined)[] = [
    point.space && { to: 'space', named: point.space, known: spaces },
    ofModel('humidityProbes', point.humidityProbe?.value.model, catalogue),
    ofModel('temperatureProbes', point.airTemperatureProbe?.value.model, catalogue),
    ofModel('transmitters', point.transmitter?.value.model, catalogue),
    ...signals.map(({ value }) =>
      value.kind === 'register' ? undefined : ofModel('receivers', value.receiver, catalogue),
    ),
    ...otherPoints(point.reports?.value).map((named): Reference => ({ to: 'point', named, known: tags })),
    ...(point.checks?.value.salts?.value ?? []).map((named): Reference => ({ to: 'salt', named, known: SALT_NAMES })),
  ];
  return found.flatMap((reference) => (reference === undefined ? [] : { ...reference, subject: tag }));
}

function otherPoints(reports: PointReports | undefined): readonly Located<string>[] {
  return [...(reports?.values() ?? [])].flatMap(({ value: { airTemperature } }) =>
    airTemperature?.value.kind === 'point' ? { ...airTemperature, value: airTemperature.value.tag } : [],
  );
}

type PointReports = NonNullable<PointEvaluation['point']['reports']>['value'];

function ofModel(
  kind: ModelKind,
  named: Located<string> | undefined,
  catalogue: ModelCatalogue,
): Reference | undefined {
  return named === undefined ? undefined : modelReference(kind, named, catalogue);
}

function modelReference(kind: ModelKind, named: Located<string>, catalogue: ModelCatalogue): Reference {
  const models: Models<unknown> = catalogue[kind];
  return { to: kind, named, known: catalogue.complete ? [...models.keys()] : undefined };
}
