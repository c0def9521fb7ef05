/** The recording that a visit names: of which space it is, and what it is laid against. */
import type { VisitModel } from '../../model/file-models.ts';
import type { Located } from '../../model/located.ts';
import type { LogColumns } from '../../model/model-types.generated.ts';
import type { SpaceEvaluation } from '../air/space.ts';
import type { EvaluatedSite } from '../evaluated-site.ts';
import { LOG_COLUMN_KEYS, type NamedColumns, type RecordingAnswer } from './answer.ts';
import { recordingBasis } from './basis.ts';
import type { RecordingBasis } from './summary.ts';

export interface VisitedRecording {
  /** The file, as the visit names it. */
  readonly log: Located<string>;
  readonly columns: NamedColumns | undefined;
  readonly space: SpaceEvaluation;
  readonly basis: RecordingBasis;
  /** Says all that the answer depends on besides the content of the log. */
  readonly key: string;
}

/** What was read for a key. */
export interface KnownRecording {
  readonly key: string;
  readonly answer: RecordingAnswer;
}

/** A recording with what was read of it; without an answer it was not read yet. */
export interface ReadRecording extends VisitedRecording {
  readonly answer: RecordingAnswer | undefined;
}

/** What a visit names as its recording must be named as one: it may then be read, and nothing else may. */
export function isNamedAsLog(name: string): boolean {
  return /\.(csv|tsv|txt|parquet)$/i.test(name);
}

/** @returns undefined where the visit names none, or nothing says of which space it is */
function visitedRecording(visit: VisitModel, site: EvaluatedSite): VisitedRecording | undefined {
  const { log, logColumns } = visit;
  const space = recordedSpace(visit, site);
  if (log === undefined || !isNamedAsLog(log.value) || space === undefined) return undefined;
  const basis = recordingBasis(space, site.points.values());
  if (basis === undefined) return undefined;
  const columns = namedColumns(logColumns);
  return { log, columns, space, basis, key: JSON.stringify([log.value, columns, basis]) };
}

export function readRecording(
  visit: VisitModel,
  site: EvaluatedSite,
  known: KnownRecording | undefined,
): ReadRecording | undefined {
  const recording = visitedRecording(visit, site);
  if (recording === undefined) return undefined;
  return { ...recording, answer: known?.key === recording.key ? known.answer : undefined };
}

/** The one that the visit names, else the only one of the site, else the only one of the visit's points. */
function recordedSpace(visit: VisitModel, { spaces, points }: EvaluatedSite): SpaceEvaluation | undefined {
  if (visit.logSpace !== undefined) return spaces.get(visit.logSpace.value);
  const [only, other] = spaces.values();
  if (other === undefined) return only;
  const tags = [
    ...visit.readings.map(({ value }) => value.point?.value),
    ...visit.settings.map(({ value }) => value.point?.value),
    ...[...visit.steps.values()].map(({ located }) => located?.value.point?.value),
  ];
  const visited = new Set(tags.flatMap((tag) => points.get(tag ?? '')?.space ?? []));
  const [space] = visited;
  return visited.size === 1 ? space : undefined;
}

function namedColumns(located: Located<LogColumns> | undefined): NamedColumns | undefined {
  if (located === undefined) return undefined;
  const { value } = located;
  const given = LOG_COLUMN_KEYS.flatMap((key) => {
    const name = value[camelCase(key)]?.value;
    return name === undefined ? [] : [[key, name] as const];
  });
  return Object.fromEntries(given);
}

type CamelCase<Text extends string> = Text extends `${infer First}-${infer Rest}`
  ? `${First}${Capitalize<CamelCase<Rest>>}`
  : Text;

/** The model has the keys of the files without their hyphens. */
function camelCase<Key extends string>(key: Key): CamelCase<Key> {
  return key.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase()) as CamelCase<Key>;
}
