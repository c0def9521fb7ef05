/** `dewright fix`: applies safe fixes, and choices that are named. */
import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import { filePath, fileUri } from '../analysis/file-location.ts';
import type { FileEdit, Fix } from '../analysis/finding.ts';
import type { Workspace } from '../analysis/workspace.ts';
import { applyEdits } from '../base/text-range.ts';
import { counted } from '../base/words.ts';
import { editsTogether } from '../features/writing/fixes.ts';
import { isRuleName } from '../rules/rule-names.ts';
import type { Call } from './call.ts';
import { findFiles } from './find-files.ts';
import { loadWorkspace, readText, shownPath } from './load.ts';
import { CallProblem } from './problem.ts';
import { readRecordings, tellUnread } from './recordings.ts';
import { replaceFile } from './write-file.ts';

/** One fix can make another possible; more rounds than this would mean that two undo each other. */
const MOST_ROUNDS = 10;

export async function fix(call: Call): Promise<number> {
  const found = findFiles(call.rest);
  const workspace = loadWorkspace(found);
  const chosen = choiceOf(call.options['choose']);
  if (chosen !== undefined) tellUnread(await readRecordings(workspace, found.files)); // no safe fix hangs on one
  const before = new Map(workspace.files().map((file) => [file, workspace.parsed(file)?.text ?? '']));
  let applied = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const fixes = found.files.flatMap((path) => fixesOf(workspace, fileUri(path), chosen));
    if (fixes.length === 0) break;
    applied += apply(workspace, editsTogether(fixes));
  }
  const changed = [...before].flatMap(([file, old]) => {
    const text = workspace.parsed(file)?.text ?? old;
    return text === old ? [] : [{ path: filePath(file), old, text }];
  });
  if (call.flags.has('dry-run')) {
    for (const { path, old, text } of changed) process.stdout.write(unifiedDiff(shownPath(path), old, text));
  } else {
    for (const { path, old } of changed) expectUnchanged(path, old);
    for (const { path, text } of changed) replaceFile(path, text);
  }
  const verb = call.flags.has('dry-run') ? 'would be made' : 'made';
  process.stderr.write(`${counted(applied, 'edit')} ${verb} in ${counted(changed.length, 'file')}\n`);
  return 0;
}

/** What an editor saved in the meantime is not written over. */
function expectUnchanged(path: string, text: string): void {
  if (readText(path) !== text) throw new CallProblem(`${path}: changed while it was being mended; nothing was written`);
}

interface Choice {
  readonly rule: string;
  readonly number: number;
}

function choiceOf(option: string | undefined): Choice | undefined {
  if (option === undefined) return undefined;
  const match = /^([a-z0-9-]+)=(\d+)$/.exec(option);
  const rule = match?.[1] ?? '';
  const number = Number(match?.[2] ?? 0);
  if (!isRuleName(rule) || number < 1)
    throw new CallProblem(`--choose ${option}: written RULE=N, where N counts the fixes of a finding from 1`);
  return { rule, number };
}

function fixesOf(workspace: Workspace, file: string, chosen: Choice | undefined): readonly Fix[] {
  const findings = workspace.analysis(file)?.findings ?? [];
  return findings.flatMap(({ rule, fixes }) => {
    if (rule === chosen?.rule) return fixes[chosen.number - 1] ?? [];
    return fixes.find(({ kind }) => kind === 'safe') ?? [];
  });
}

function apply(workspace: Workspace, edits: readonly FileEdit[]): number {
  for (const file of new Set(edits.map((edit) => edit.file))) {
    const own = edits.filter((edit) => edit.file === file);
    const text = workspace.parsed(file)?.text;
    if (text !== undefined) workspace.set(file, applyEdits(text, own));
  }
  return edits.length;
}

function unifiedDiff(path: string, old: string, text: string): string {
  return createTwoFilesPatch(`a/${path}`, `b/${path}`, old, text, undefined, undefined, {
    headerOptions: FILE_HEADERS_ONLY,
  });
}
