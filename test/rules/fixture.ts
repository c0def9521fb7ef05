/** Reads the fixtures of the rules: files with the expected findings as caret comments under the lines they mark. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { RecordingAnswer } from '../../server/src/evaluate/recorded/answer.ts';
import { fileKindOf } from '../../server/src/model/schema.ts';

/** The day on which the fixtures are looked at. */
const TODAY = '2026-10-01';

export const RULES_FOLDER = fileURLToPath(new URL('./', import.meta.url));

export interface Expected {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly severity: string;
  readonly rule: string;
  /** Given where the words are part of the example. */
  readonly message?: string;
}

export interface MarkedText {
  readonly text: string;
  readonly expected: readonly Expected[];
}

/** `#   ^^^^ error rule-name: message`; `#<^^` marks from the `#` itself on. */
const MARK = /^\s*#(<?)\s*(\^+) (error|warning|information|hint) ([a-z-]+)(?:: (.*))?$/;

/** Takes the caret comments out of a text. Lines and columns count from 0. */
export function readMarks(marked: string): MarkedText {
  const kept: string[] = [];
  const expected: Expected[] = [];
  for (const line of marked.split('\n')) {
    const match = MARK.exec(line);
    if (match === null) {
      kept.push(line);
      continue;
    }
    const [, fromHash, carets = '', severity = '', rule = '', message] = match;
    const first = line.indexOf('^');
    const start = fromHash === '<' ? line.indexOf('#') : first;
    const end = first + carets.length;
    const mark = { line: kept.length - 1, start, end, severity, rule };
    expected.push(message === undefined ? mark : { ...mark, message });
  }
  return { text: kept.join('\n'), expected };
}

export function fixtureFolders(): readonly string[] {
  const folders = readdirSync(RULES_FOLDER, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return folders.map(({ name }) => name).filter((name) => name !== 'kits');
}

export interface Fixture {
  readonly rule: string;
  readonly files: readonly string[];
  path(file: string): string;
  read(file: string): string;
}

export function fixtureOf(rule: string): Fixture {
  const folder = `${RULES_FOLDER}${rule}/`;
  return {
    rule,
    files: readdirSync(folder).sort(),
    path: (file) => `${folder}${file}`,
    read: (file) => readFileSync(`${folder}${file}`, 'utf8'),
  };
}

/** The files that show what the rule finds, and what it leaves alone. */
export function examplesOf({ files }: Fixture): readonly string[] {
  return files.filter((file) => /^(faulty|sound)[^.]*\.dew/.test(file));
}

/** Of the rule itself, in one of its examples. */
export function ownFindings(fixture: Fixture, workspace: Workspace, file: string): readonly Finding[] {
  const findings = workspace.analysis(fileUri(fixture.path(file)))?.findings ?? [];
  return findings.filter(({ rule }) => rule === fixture.rule);
}

/** Texts by the names of files in a fixture's folder, in place of what lies there. */
export type Texts = ReadonlyMap<string, string>;

/** The files of a fixture that are no examples: those that an example needs. */
export function besideExamples(fixture: Fixture): readonly string[] {
  return fixture.files.filter((file) => !/^(faulty|sound)|\.fixed\./.test(file) && fileKindOf(file) !== undefined);
}

/** The workspace of one file of a fixture: the file, the files beside it that are no examples, and the shared kits. */
export function workspaceOf(fixture: Fixture, file: string, texts: Texts): Workspace {
  const workspace = new Workspace({ today: () => TODAY });
  const kits = `${RULES_FOLDER}kits/`;
  for (const kit of readdirSync(kits)) workspace.set(fileUri(`${kits}${kit}`), readFileSync(`${kits}${kit}`, 'utf8'));
  for (const name of [...besideExamples(fixture), file]) {
    workspace.set(fileUri(fixture.path(name)), texts.get(name) ?? fixture.read(name));
  }
  workspace.markWhole();
  setRecording(workspace, fixture, file);
  return workspace;
}

/**
 * What was read of the recording of a visit lies beside it; test/recording holds it against the log. It was read with
 * the site as it lies there, and says nothing of another.
 */
function setRecording(workspace: Workspace, fixture: Fixture, file: string): void {
  const beside = file.replace('.dewvisit.yaml', '.recording.json');
  const visit = fileUri(fixture.path(file));
  const content = workspace.analysis(visit)?.content;
  if (content?.kind !== 'visit' || content.recording === undefined || !fixture.files.includes(beside)) return;
  const answer = JSON.parse(fixture.read(beside)) as RecordingAnswer;
  const { basis, columns, key } = content.recording;
  const isOfThis =
    answer.kind === 'summary' ? JSON.stringify(answer.summary.basis) === JSON.stringify(basis) : columns === undefined;
  if (isOfThis) workspace.setRecording(visit, { key, answer });
}

/** @param texts where the file, or one beside it, is not as it lies there */
export function findingsOf(fixture: Fixture, file: string, texts: Texts): readonly Finding[] {
  return workspaceOf(fixture, file, texts).analysis(fileUri(fixture.path(file)))?.findings ?? [];
}
