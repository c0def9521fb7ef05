/** Reads the fixtures of the rules: files with the expected findings as caret comments under the lines they mark. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
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

/** The workspace of one file of a fixture: the file, the files beside it that are no examples, and the shared kits. */
export function workspaceOf(fixture: Fixture, file: string, text: string): Workspace {
  const workspace = new Workspace({ today: () => TODAY });
  const kits = `${RULES_FOLDER}kits/`;
  for (const kit of readdirSync(kits)) workspace.set(fileUri(`${kits}${kit}`), readFileSync(`${kits}${kit}`, 'utf8'));
  for (const other of fixture.files) {
    const isExample = /^(faulty|sound)/.test(other);
    if (!isExample && fileKindOf(other) !== undefined) workspace.set(fileUri(fixture.path(other)), fixture.read(other));
  }
  workspace.set(fileUri(fixture.path(file)), text);
  workspace.markWhole();
  return workspace;
}

export function findingsOf(fixture: Fixture, file: string, text: string): readonly Finding[] {
  return workspaceOf(fixture, file, text).analysis(fileUri(fixture.path(file)))?.findings ?? [];
}
