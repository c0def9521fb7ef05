/** `dewright check`: the findings of files and folders. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileUri } from '../analysis/file-location.ts';
import { Workspace } from '../analysis/workspace.ts';
import { fileKindOf } from '../model/schema.ts';
import { isRuleName, RULE_NAMES } from '../rules/rule-names.ts';
import { type Call, choice } from './call.ts';
import { checkInWorkers, WORTH_WORKERS } from './check-in-workers.ts';
import { exitStatus, failLimitOf } from './fail-on.ts';
import { type FileReport, type ReportOptions, reportOf, summaryOf } from './file-report.ts';
import { findFiles } from './find-files.ts';
import { FORMAT_NAMES, FORMATS } from './formats/formats.ts';
import { loadRelated, loadWorkspace } from './load.ts';
import { CallProblem, nearestHint } from './problem.ts';
import { readRecordings, tellUnread } from './recordings.ts';
import { wantsColour } from './terminal.ts';

export async function check(call: Call): Promise<number> {
  const format = choice(call, 'format', FORMAT_NAMES, 'text');
  const limit = failLimitOf(call);
  const only = call.options['only'];
  if (only !== undefined && !isRuleName(only))
    throw new CallProblem(`--only ${only}: there is no such rule${nearestHint(only, RULE_NAMES)}`);
  const options = { format, only, colour: wantsColour(call.flags.has('no-color')) };
  const reports = await reportsOf(call, options);
  const summary = summaryOf(reports);
  const texts = reports.map(({ text }) => text).filter((text) => text !== '');
  process.stdout.write(`${FORMATS[format].ofAll(texts, summary, options.colour)}\n`);
  return exitStatus(summary.counts, limit);
}

async function reportsOf(call: Call, options: ReportOptions): Promise<readonly FileReport[]> {
  const name = call.options['stdin-as'];
  if (name !== undefined) return standardInput(name, call, options);
  const found = findFiles(call.rest);
  const wanted = found.files.filter(inShard(call.options['shard']));
  if (wanted.length >= WORTH_WORKERS) return checkInWorkers(found, wanted, options);
  const workspace = loadWorkspace(found);
  tellUnread(await readRecordings(workspace, wanted));
  return wanted.flatMap((path) => reportOf(workspace, fileUri(path), options) ?? []);
}

/** Checks standard input in place of the file that it will be saved as. */
async function standardInput(name: string, call: Call, options: ReportOptions): Promise<readonly FileReport[]> {
  if (call.rest.length > 0) throw new CallProblem('--stdin-as takes no paths');
  if (fileKindOf(name) === undefined) {
    throw new CallProblem(`--stdin-as ${name}: not named *.dewsite.yaml, *.dewkit.yaml or *.dewvisit.yaml`);
  }
  const file = fileUri(resolve(name));
  const workspace = new Workspace();
  workspace.set(file, readFileSync(0, 'utf8'));
  loadRelated(workspace, resolve(name), true);
  workspace.markWhole({ uses: undefined, siteIds: [] });
  tellUnread(await readRecordings(workspace, [resolve(name)]));
  const report = reportOf(workspace, file, options);
  return report === undefined ? [] : [report];
}

/** Every file is read, so that tags are compared over all of them; a shard reports its share of the files. */
function inShard(option: string | undefined): (path: string, index: number) => boolean {
  if (option === undefined) return () => true;
  const [shard, of] = (/^(\d+)\/(\d+)$/.exec(option) ?? []).slice(1).map(Number);
  if (shard === undefined || of === undefined || shard < 1 || shard > of) {
    throw new CallProblem(`--shard ${option}: written I/N, with I from 1 to N`);
  }
  return (_, index) => index % of === shard - 1;
}
