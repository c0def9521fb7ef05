/** The samples as one workspace, as they lie on disk, on a stated day. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { fileKindOf } from '../../server/src/model/schema.ts';

export const SAMPLES_FOLDER = fileURLToPath(new URL('../../samples/', import.meta.url));

/** The day on which the samples are checked: their checks are due a year after September 2026. */
const TODAY = '2026-11-25';

/** The paths below the folder of every site, kit and visit. */
export const SAMPLE_NAMES: readonly string[] = readdirSync(SAMPLES_FOLDER, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => fileKindOf(name) !== undefined)
  .sort();

export function readSample(name: string): string {
  return readFileSync(`${SAMPLES_FOLDER}${name}`, 'utf8');
}

/** @param today the day on which it is checked, `YYYY-MM-DD` */
export function sampleWorkspace(today = TODAY): Workspace {
  const workspace = new Workspace({ today: () => today });
  for (const name of SAMPLE_NAMES) workspace.set(sampleUri(name), readSample(name));
  workspace.markWhole();
  return workspace;
}

export function sampleUri(name: string): string {
  return fileUri(`${SAMPLES_FOLDER}${name}`);
}

export function analysisOf(workspace: Workspace, name: string): Analysis {
  const analysis = workspace.analysis(sampleUri(name));
  if (analysis === undefined) throw new Error(`${name} is no sample`);
  return analysis;
}
