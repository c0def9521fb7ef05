/** `dewright replay LOG --space SPACE [SITE]`: a recording laid against the envelope of a space. */
import { resolve } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import {
  type DetectedColumns,
  LOG_COLUMN_KEYS,
  type LogColumnKey,
  type NamedColumns,
} from '../evaluate/recorded/answer.ts';
import { recordingBasis } from '../evaluate/recorded/basis.ts';
import { leavesEnvelope, type RecordingBasis } from '../evaluate/recorded/summary.ts';
import { LOG_HUMIDITIES } from '../recording/dialect/log-quantities.ts';
import { type Call, choice } from './call.ts';
import { countsOf, exitStatus, failLimitOf } from './fail-on.ts';
import { findFiles } from './find-files.ts';
import { type Replay, replayJson, replayText } from './formats/replay.ts';
import { loadWorkspace, shownPath } from './load.ts';
import { CallProblem, nearestHint } from './problem.ts';
import { readRecording } from './recordings.ts';

/** A recording outside its envelope is a warning, as in the rule `log-outside-envelope`. */
export async function replay(call: Call): Promise<number> {
  const format = choice(call, 'format', ['text', 'json'], 'text');
  const limit = failLimitOf(call);
  const [log, sitePath, ...more] = call.rest;
  if (log === undefined || more.length > 0)
    throw new CallProblem('replay takes a log and, where there are several, a site');
  const columns = namedColumns(call.options['columns']);
  const { site, basis } = laidAgainst(call.options['space'], sitePath);
  const answer = await readRecording({ path: resolve(log), columns, basis }, true);
  if (answer.kind === 'problem') throw new CallProblem(`${log}: ${answer.sentence}`);
  if (answer.kind === 'columns') throw new CallProblem(`${log}: ${doubtWords(answer.detected)}`);
  const said: Replay = {
    log,
    site: shownPath(filePath(site.file)),
    summary: answer.summary,
    detected: answer.detected,
  };
  process.stdout.write(`${format === 'json' ? replayJson(said) : replayText(said)}\n`);
  const isOutside = leavesEnvelope(answer.summary);
  return exitStatus(countsOf(isOutside ? ['warning'] : []), limit);
}

/** `time=t,air-temperature=T_dry in degF`; a comma inside a column's name parts nothing. */
function namedColumns(option: string | undefined): NamedColumns | undefined {
  if (option === undefined) return undefined;
  const pairs = option.split(/,(?=[a-z-]+=)/).map((pair): [LogColumnKey, string] => {
    const at = pair.indexOf('=');
    const key = LOG_COLUMN_KEYS.find((known) => known === pair.slice(0, at));
    if (key !== undefined) return [key, pair.slice(at + 1)];
    throw new CallProblem(`--columns ${pair}: written KEY=COLUMN, with a key of ${LOG_COLUMN_KEYS.join(', ')}`);
  });
  return Object.fromEntries(pairs);
}

function doubtWords({ doubts, columns }: DetectedColumns): string {
  const hasHumidity = LOG_HUMIDITIES.some((key) => columns[key] !== undefined);
  const humidity = hasHumidity ? {} : { 'relative-humidity': 'COLUMN' };
  const example = Object.entries({ time: 'COLUMN', 'air-temperature': 'COLUMN', ...humidity, ...columns });
  const words = example.map(([key, column]) => `${key}=${column}`).join(',');
  return `${doubts.join(' ')} Say which column is which: --columns “${words}”.`;
}

interface LaidAgainst {
  readonly site: SiteEvaluation;
  readonly basis: RecordingBasis;
}

function laidAgainst(space: string | undefined, sitePath: string | undefined): LaidAgainst {
  const { files } = findFiles(sitePath === undefined ? [] : [sitePath]);
  const workspace = loadWorkspace({ files, whole: false });
  const sites = files.flatMap((file): SiteEvaluation[] => {
    const content = workspace.analysis(fileUri(file))?.content;
    return content?.kind === 'site' ? [content.site] : [];
  });
  const spaces = sites.flatMap((site) => [...site.spaces.values()].map((own) => ({ site, own })));
  const names = [...new Set(spaces.map(({ own }) => own.id))];
  const wanted = space ?? (names.length === 1 ? names[0] : undefined);
  if (wanted === undefined) throw new CallProblem(`replay needs --space SPACE, one of ${names.join(', ')}`);
  const [found, other] = spaces.filter(({ own }) => own.id === wanted);
  if (found === undefined) throw new CallProblem(`--space ${wanted}: there is no such space${hint(wanted, names)}`);
  if (other !== undefined)
    throw new CallProblem(`--space ${wanted}: several sites have one; name the site after the log`);
  const basis = recordingBasis(found.own, found.site.points.values());
  if (basis !== undefined) return { site: found.site, basis };
  throw new CallProblem(`--space ${wanted}: its envelope cannot be computed with; dewright check says why`);
}

function hint(space: string, names: readonly string[]): string {
  const nearest = nearestHint(space, names);
  return nearest !== '' || names.length === 0 ? nearest : `; there are ${names.join(', ')}`;
}
