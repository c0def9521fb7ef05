/** What every part of completion needs to know of the place. */
import type { Analysis } from '../../../analysis/analysis.ts';
import type { Workspace } from '../../../analysis/workspace.ts';
import type { SpaceEvaluation } from '../../../evaluate/air/space.ts';
import type { PointEvaluation } from '../../../evaluate/point.ts';
import { branchOf, type FileKind, resolveSchema, type SchemaNode } from '../../../model/schema.ts';
import type { QuantityName } from '../../../quantity/quantities.ts';
import { quantityAt } from '../../support/place-dimension.ts';
import { schemaAt } from '../../support/schema-path.ts';
import { visitIn } from '../../support/visit-places.ts';
import { type TypingPlace, typingPlace } from './typing-place.ts';

export interface CompletionContext {
  readonly workspace: Workspace;
  readonly analysis: Analysis;
  readonly kind: FileKind;
  readonly place: TypingPlace;
  /** Of the map whose key is typed, or of the value. */
  readonly schema: SchemaNode;
  /** The point of a site that the place is inside, or that the entry of a visit names; as far as it can be told. */
  readonly point: PointEvaluation | undefined;
  /** The space that the place is in, or that its point is in. */
  readonly space: SpaceEvaluation | undefined;
  /** The quantity that spans, limits and tolerances at the place speak of. */
  readonly quantity: QuantityName | undefined;
}

export function completionContext(
  workspace: Workspace,
  analysis: Analysis,
  offset: number,
): CompletionContext | undefined {
  const { content, parsed } = analysis;
  const { kind } = parsed;
  const place = typingPlace(parsed, offset);
  const schema = place === undefined ? undefined : schemaOf(kind, place);
  if (place === undefined || schema === undefined) return undefined;
  const [map, entry = ''] = place.path;
  const site = content.kind === 'site' ? content.site : undefined;
  const named = visitIn(analysis)?.site.points.get(place.siblings.get('point') ?? '');
  const point = map === 'points' ? site?.points.get(entry) : named;
  const space = map === 'spaces' ? site?.spaces.get(entry) : point?.space;
  return {
    workspace,
    analysis,
    kind,
    place,
    schema,
    point,
    space,
    quantity: quantityAt(place.path, place.siblings.get('quantity')),
  };
}

/** The `kind` of a map that is told apart by it takes the kinds of all branches. */
function schemaOf(kind: FileKind, { path, role, siblings }: TypingPlace): SchemaNode | undefined {
  const map = schemaAt(kind, path.slice(0, -1))?.schema;
  if (role === 'value' && map?.discriminator?.propertyName === path.at(-1)) return map && kindsOf(kind, map);
  const schema = schemaAt(kind, path, siblings.get('kind'))?.schema;
  return role === 'key' && schema !== undefined ? branchOf(kind, schema, siblings.get('kind')) : schema;
}

/** The kinds of a map that is told apart by them, as one list of words. */
export function kindsOf(kind: FileKind, schema: SchemaNode): SchemaNode {
  const tags = (schema.oneOf ?? []).map(
    (branch) => resolveSchema(kind, branch).properties?.[schema.discriminator?.propertyName ?? ''],
  );
  const known = tags.flatMap((tag) =>
    tag?.const === undefined ? [] : [{ word: tag.const, about: tag.description ?? '' }],
  );
  return {
    description: 'Which kind it is. It decides which keys there are.',
    enum: known.map(({ word }) => word),
    enumDescriptions: known.map(({ about }) => about),
  };
}
