/** Names that a value may refer to: spaces, points, models, kits, sites, salts, rules. */
import { relativeName } from '../../../analysis/file-location.ts';
import { type SaltChoice, saltChoices } from '../../../evaluate/resolved/salt-choices.ts';
import { siteModelOf } from '../../../model/file-models.ts';
import type { Located } from '../../../model/located.ts';
import type { Point } from '../../../model/model-types.generated.ts';
import type { Entry } from '../../../model/read-file.ts';
import { showQuantity } from '../../../quantity/format-quantity.ts';
import { readQuantity } from '../../../quantity/read-quantity.ts';
import { yamlWord } from '../../../syntax/yaml-word.ts';
import { siteOf } from '../../moving/names.ts';
import { extremesOf, shownRange } from '../../support/envelope-ranges.ts';
import { type CompletionItem, type CompletionKind, withDetail } from './completion-item.ts';
import type { CompletionContext } from './context.ts';
import { modelItems } from './models.ts';

export function referenceItems(context: CompletionContext): readonly CompletionItem[] {
  const { reference } = context.schema;
  if (context.schema['air-temperature-source'] === true) return airTemperatureItems(context);
  if (isSiteOfVisit(context)) return siteItems(context);
  switch (reference) {
    case 'space':
      return spaceItems(context);
    case 'point':
      return pointsOf(context).map(([tag, entry]) => nameItem(tag, 'reference', entry.located?.value.title?.value));
    case 'kit-file':
      return kitItems(context);
    case 'salt':
      return saltItems(context);
    case 'humidity-probe-model':
    case 'temperature-probe-model':
    case 'transmitter-model':
    case 'receiver-model':
      return modelItems(context, reference);
    default:
      return [];
  }
}

function nameItem(name: string, kind: CompletionKind, detail: string | undefined): CompletionItem {
  return { label: name, kind, insert: [yamlWord(name)], ...withDetail(detail) };
}

function spaceItems({ analysis: { content, parsed } }: CompletionContext): readonly CompletionItem[] {
  if (content.kind !== 'site') return [];
  const { spaces } = siteModelOf(parsed.model);
  return [...spaces.values()].map(({ name, located }) => {
    const space = content.site.spaces.get(name);
    const extremes = space && extremesOf(space, 'dew-point');
    const told = [located?.value.title?.value, extremes && `dew point ${shownRange(extremes)}`];
    return nameItem(name, 'reference', told.filter((text) => text !== undefined).join(', '));
  });
}

/** The points of the site that the file belongs to; of every site where that is not told. */
function pointsOf({ workspace, analysis: { parsed } }: CompletionContext): readonly [string, Entry<Point>][] {
  const own = siteOf(workspace, parsed);
  return (own === undefined ? workspace.files('site') : [own]).flatMap((site) => {
    const model = workspace.parsed(site)?.model;
    return model === undefined ? [] : [...siteModelOf(model).points];
  });
}

/** The point's own probe first, then probes of other points in the same air, then a fixed value. */
function airTemperatureItems(context: CompletionContext): readonly CompletionItem[] {
  const { point } = context;
  const hasOwn = point?.point.airTemperatureProbe !== undefined;
  const own = nameItem('air-temperature-probe', 'word', hasOwn ? undefined : 'no: this point has none yet');
  const heated = point?.heater.on === true;
  const head = nameItem('humidity-probe', 'word', heated ? 'no: its head is heated' : 'the unheated head itself');
  const others = pointsOf(context).flatMap(([tag, { located }]): { item: CompletionItem; isNear: boolean }[] => {
    if (located?.value.airTemperatureProbe === undefined || tag === context.place.path[1]) return [];
    const isNear = located.value.space?.value === point?.point.space?.value;
    const where = isNear ? 'probe in the same space' : `probe in another space, ${located.value.space?.value ?? '?'}`;
    return [{ item: nameItem(tag, 'reference', where), isNear }];
  });
  const near = others.filter(({ isNear }) => isNear).map(({ item }) => item);
  const far = others.filter(({ isNear }) => !isNear).map(({ item }) => item);
  const fixed: CompletionItem = {
    label: '60 degC',
    kind: 'value',
    detail: 'a fixed value',
    insert: [{ hole: '60' }, ' degC'],
  };
  return [
    ...(hasOwn ? [own] : []),
    ...(heated ? [] : [head]),
    ...near,
    fixed,
    ...far,
    ...(hasOwn ? [] : [own]),
    ...(heated ? [head] : []),
  ];
}

function kitItems({ workspace, analysis, place }: CompletionContext): readonly CompletionItem[] {
  const paths = workspace.files('kit').map((kit) => relativeName(analysis.file, kit));
  return paths.filter((path) => !place.items.includes(path)).map((path) => nameItem(path, 'file', undefined));
}

function isSiteOfVisit({ kind, place: { path } }: CompletionContext): boolean {
  return kind === 'visit' && path.join('/') === 'visit/site';
}

function siteItems({ workspace }: CompletionContext): readonly CompletionItem[] {
  return workspace.files('site').flatMap((file) => {
    const model = workspace.parsed(file)?.model;
    const header = model && siteModelOf(model).header?.value;
    return header?.id === undefined ? [] : [nameItem(header.id.value, 'reference', header.title?.value)];
  });
}

/** Salts that are valid at the temperature of the check and go with the space first, the others last with the reason. */
export function saltItems({ place, space, point }: CompletionContext): readonly CompletionItem[] {
  const exposures: readonly Located<string>[] = space?.located.value.exposure?.value ?? [];
  const celsius = typedTemperature(place.siblings.get('at')) ?? point?.point.checks?.value.at?.value.value;
  const choices = saltChoices(
    celsius,
    exposures.map(({ value }) => value),
  ).filter(({ id }) => !place.items.includes(id));
  const good = choices.filter(({ objection }) => objection === undefined);
  const bad = choices.filter(({ objection }) => objection !== undefined);
  return [...good, ...bad].map((choice) => nameItem(choice.id, 'reference', saltDetail(choice)));
}

function saltDetail({ name, relativeHumidity, objection }: SaltChoice): string {
  const humidity = relativeHumidity === undefined ? '' : `${showQuantity(relativeHumidity, 'relative-humidity')}, `;
  return objection === undefined ? `${humidity}${name}` : `no: ${name}, ${objection}`;
}

function typedTemperature(typed: string | undefined): number | undefined {
  const read = typed === undefined ? undefined : readQuantity(typed, 'temperature');
  return read?.ok === true ? read.value.value.value : undefined;
}
