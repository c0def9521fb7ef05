/** Harms files without end and looks at what becomes of them. */
import { fileUri } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { generatedFile } from './generated-file.ts';
import { mutate } from './mutations.ts';
import { probe } from './probe.ts';
import { Random } from './random.ts';
import { SEED_FILES } from './seed-files.ts';

export interface Failure {
  readonly input: number;
  readonly path: string;
  readonly wrong: string;
  readonly text: string;
}

export interface FuzzResult {
  readonly failures: readonly Failure[];
  /** The longest that an input took, in ms. */
  readonly slowest: number;
}

/** How many harmed texts follow on each other in one file before another is taken, as while somebody types. */
const IN_A_ROW = 8;
const SHARE_GENERATED = 0.15;
const MOST_FAILURES = 200;

/** @param told called now and then with the number of inputs so far */
export function fuzzFiles(inputs: number, seed: number, told: (done: number) => void = () => {}): FuzzResult {
  const random = new Random(seed);
  const failures: Failure[] = [];
  const workspace = workspaceOfSeeds();
  let slowest = 0;
  for (let done = 0; done < inputs && failures.length < MOST_FAILURES; ) {
    const { path, text: whole, kind } = random.pick(SEED_FILES);
    const file = fileUri(path);
    let text = random.chance(SHARE_GENERATED) ? generatedFile(kind, random) : whole;
    for (let turn = 0; turn < IN_A_ROW && done < inputs; turn++, done++) {
      text = mutate(text, random, random.pick(SEED_FILES).text);
      const { took, wrong } = probe(workspace, file, text, random);
      slowest = Math.max(slowest, took);
      if (wrong !== undefined) failures.push({ input: done, path, wrong, text });
    }
    workspace.set(file, whole);
    told(done);
  }
  return { failures, slowest };
}

/** All of them are there and analysed all the time, so that what crosses files is harmed too. */
function workspaceOfSeeds(): Workspace {
  const workspace = new Workspace();
  for (const { path, text } of SEED_FILES) workspace.set(fileUri(path), text);
  workspace.markWhole();
  for (const { path } of SEED_FILES) workspace.analysis(fileUri(path));
  return workspace;
}
