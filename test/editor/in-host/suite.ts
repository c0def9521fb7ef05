/** Runs inside the extension host with the editor's real API; bundled for it by the test outside. */
import * as vscode from 'vscode';
import { extension, findingOf, open, SITE_FILE, workspaceFile } from './editor-steps.ts';
import {
  type Checks,
  FACTS,
  type Fact,
  type FactGroup,
  type InHostResult,
  type InHostStart,
  RESULT_MARK,
  START_MARK,
} from './facts.ts';
import { FILE_CHECKS } from './file-checks.ts';
import { FINDING_CHECKS } from './finding-checks.ts';
import { MENDING_CHECKS } from './mending-checks.ts';
import { NAME_CHECKS } from './name-checks.ts';
import { READING_CHECKS } from './reading-checks.ts';
import { STRUCTURE_CHECKS } from './structure-checks.ts';
import { TYPING_CHECKS } from './typing-checks.ts';
import { VISIT_CHECKS } from './visit-checks.ts';

const CHECKS: Checks<FactGroup> = {
  ...FINDING_CHECKS,
  ...MENDING_CHECKS,
  ...READING_CHECKS,
  ...TYPING_CHECKS,
  ...NAME_CHECKS,
  ...STRUCTURE_CHECKS,
  ...VISIT_CHECKS,
  ...FILE_CHECKS,
};

/** The editor calls this and waits for it. */
export async function run(): Promise<void> {
  console.log(START_MARK + JSON.stringify(await start()));
  for (const facts of Object.values<readonly Fact[]>(FACTS)) {
    for (const fact of facts) console.log(RESULT_MARK + JSON.stringify(await resultOf(fact)));
  }
}

/** No file of ours is open yet, so that this is what activates the extension. */
async function start(): Promise<InHostStart> {
  const before = performance.now();
  await extension().activate();
  const active = performance.now();
  await findingOf(await open(SITE_FILE), 'air-temperature-missing');
  return {
    version: vscode.version,
    inWebWorker: 'importScripts' in globalThis,
    scheme: workspaceFile('.').scheme,
    activation: active - before,
    firstFindings: performance.now() - active,
  };
}

function resultOf(fact: Fact): Promise<InHostResult> {
  return CHECKS[fact]().then(
    () => ({ fact }),
    (error: unknown) => ({ fact, failure: String(error) }),
  );
}
