/** `dewright check`: the findings of files and folders. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileUri } from '../analysis/file-location.ts';
import { fileKindOf } from '../model/schema.ts';
import { SEVERITIES, type Severity } from '../rules/rule.ts';
import { isRuleName } from '../rules/rule-names.ts';
import { type Call, choice } from './call.ts';
import { type CheckResult, checkFiles, reaches } from './check-result.ts';
import { findFiles } from './find-files.ts';
import { formatJson } from './format-json.ts';
import { formatText } from './format-text.ts';
import { loadKits, loadWorkspace } from './load.ts';
import { CallProblem } from './problem.ts';
import { coloursFor, wantsColour } from './terminal.ts';

const FORMATS = ['text', 'json'] as const;
const LIMITS = [...SEVERITIES, 'never'] as const;

export function check(call: Call): number {
  const format = choice(call, 'format', FORMATS, 'text');
  const limit: Severity | 'never' = choice(call, 'fail-on', LIMITS, 'error');
  const only = call.options['only'];
  if (only !== undefined && !isRuleName(only)) throw new CallProblem(`--only ${only}: there is no such rule`);
  const result = resultOf(call, only);
  const colours = coloursFor(wantsColour(call.flags.has('no-color')));
  process.stdout.write(`${format === 'json' ? formatJson(result) : formatText(result, colours)}\n`);
  return reaches(result.counts, limit) ? 1 : 0;
}

function resultOf(call: Call, only: string | undefined): CheckResult {
  const name = call.options['stdin-as'];
  if (name !== undefined) return standardInput(name, call, only);
  const found = findFiles(call.rest);
  const workspace = loadWorkspace(found);
  return checkFiles(workspace, found.files.filter(inShard(call.options['shard'])).map(fileUri), only);
}

/** Checks standard input in place of the file that it will be saved as. */
function standardInput(name: string, call: Call, only: string | undefined): CheckResult {
  if (call.rest.length > 0) throw new CallProblem('--stdin-as takes no paths');
  if (fileKindOf(name) === undefined) {
    throw new CallProblem(`--stdin-as ${name}: not named *.dewsite.yaml, *.dewkit.yaml or *.dewvisit.yaml`);
  }
  const file = fileUri(resolve(name));
  const workspace = loadWorkspace({ files: [], whole: false });
  workspace.set(file, readFileSync(0, 'utf8'));
  loadKits(workspace, file);
  return checkFiles(workspace, [file], only);
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
