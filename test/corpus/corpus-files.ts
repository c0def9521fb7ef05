/** Reads the corpus: whole sites as practitioners write them, sound and faulty, with the kits that they name. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import type { Finding } from '../../server/src/analysis/finding.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { lineIndexOf } from '../../server/src/base/line-index.ts';
import type { Expected } from '../rules/fixture.ts';

const FOLDER = fileURLToPath(new URL('./', import.meta.url));

/** The day on which the corpus is checked: what is due by then is part of the examples. */
const TODAY = '2026-11-25';

export type CorpusPart = 'sound' | 'faulty' | 'kits';

export function corpusFiles(part: CorpusPart): readonly string[] {
  return readdirSync(`${FOLDER}${part}`).sort();
}

export function readCorpusFile(part: CorpusPart, file: string): string {
  return readFileSync(`${FOLDER}${part}/${file}`, 'utf8');
}

/** @param text what the file holds, where that is not what is on disk */
export function analyseCorpusFile(part: CorpusPart, file: string, text = readCorpusFile(part, file)): Analysis {
  const workspace = new Workspace({ today: () => TODAY });
  for (const kit of corpusFiles('kits')) workspace.set(uriOf('kits', kit), readCorpusFile('kits', kit));
  workspace.set(uriOf(part, file), text);
  const analysis = workspace.analysis(uriOf(part, file));
  if (analysis === undefined) throw new Error(`${file} is named as none of our files`);
  return analysis;
}

function uriOf(part: CorpusPart, file: string): string {
  return fileUri(`${FOLDER}${part}/${file}`);
}

/** A finding as a caret comment states it. */
export function markOf({ range, severity, rule }: Finding, text: string): Expected {
  const lines = lineIndexOf(text);
  const [from, to] = [lines.positionAt(range.start), lines.positionAt(range.end)];
  return { line: from.line, start: from.character, end: to.character, severity, rule };
}
