/** Every name in a site file that stands for something defined elsewhere, with what there is to name. */
import { remembered } from '../../base/remembered.ts';
import type { ModelCatalogue } from '../../evaluate/equipment/models.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import { SALT_NAMES } from '../../evaluate/resolved/salt-choices.ts';
import type { KitModel } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type { SiteView } from '../rule.ts';

/** The maps of a kit, by the key of the model and as its file spells it. */
export type ModelKind = 'humidityProbes' | 'temperatureProbes' | 'transmitters' | 'receivers';

export interface Reference {
  readonly to: 'space' | 'point' | 'salt' | ModelKind;
  readonly named: Located<string>;
  /** The tag of the point that names it; absent for the site itself. */
  readonly subject?: string;
}

/** What may be named of each kind; undefined where not all of it is known, so that nothing can be said. */
export type KnownNames = Readonly<Record<Reference['to'], Names | undefined>>;

/** A set of names, or a map by name. */
export type Names = Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>;

export const MODEL_KINDS: readonly ModelKind[] = ['humidityProbes', 'temperatureProbes', 'transmitters', 'receivers'];

export function isModelKind(to: Reference['to']): to is ModelKind {
  return MODEL_KINDS.some((kind) => kind === to);
}

/**
 * Those of the site itself, then those of each point in the order of the file. They are not joined: a site has some
 * thousands of them, and every edit would join them again.
 */
export function referencesOf({ settings, points }: SiteView): readonly (readonly Reference[])[] {
  const receiver = settings.header?.defaults?.value.receiver;
  const ofSite: readonly Reference[] = receiver === undefined ? [] : [{ to: 'receivers', named: receiver }];
  return [ofSite, ...points.map((point) => (point.entry.broken ? [] : referencesOfPoint(point)))];
}

/** Those that stand for nothing. */
export const unknownReferences = remembered((view: SiteView): readonly Reference[] => {
  const known = knownNames(view);
  const isUnknown = ({ to, named }: Reference): boolean => known[to]?.has(named.value) === false;
  return referencesOf(view).flatMap((references) => references.filter(isUnknown));
});

export const knownNames = remembered(({ model, catalogue }: SiteView): KnownNames => {
  const models = (kind: ModelKind) => (catalogue.complete ? catalogue[kind] : undefined);
  return {
    space: model.brokenKeys.has('spaces') ? undefined : model.spaces,
    point: model.brokenKeys.has('points') ? undefined : model.points,
    salt: new Set(SALT_NAMES),
    humidityProbes: models('humidityProbes'),
    temperatureProbes: models('temperatureProbes'),
    transmitters: models('transmitters'),
    receivers: models('receivers'),
  };
});

/** Whether a kit has a model of this kind and id. */
export function hasModel(kit: KitModel | ModelCatalogue, kind: ModelKind, id: string): boolean {
  return kit[kind].has(id);
}

const referencesOfPoint = remembered(({ tag, point }: PointEvaluation): readonly Reference[] => {
  const to = (kind: Reference['to'], named: Located<string> | undefined): readonly Reference[] =>
    named === undefined ? [] : [{ to: kind, named, subject: tag }];
  const signals = [...(point.signals?.value.values() ?? [])];
  return [
    ...to('space', point.space),
    ...to('humidityProbes', point.humidityProbe?.value.model),
    ...to('temperatureProbes', point.airTemperatureProbe?.value.model),
    ...to('transmitters', point.transmitter?.value.model),
    ...signals.flatMap(({ value }) => (value.kind === 'register' ? [] : to('receivers', value.receiver))),
    ...otherPoints(point.reports?.value).flatMap((named) => to('point', named)),
    ...(point.checks?.value.salts?.value ?? []).flatMap((named) => to('salt', named)),
  ];
});

function otherPoints(reports: PointReports | undefined): readonly Located<string>[] {
  return [...(reports?.values() ?? [])].flatMap(({ value: { airTemperature } }) =>
    airTemperature?.value.kind === 'point' ? { ...airTemperature, value: airTemperature.value.tag } : [],
  );
}

type PointReports = NonNullable<PointEvaluation['point']['reports']>['value'];
