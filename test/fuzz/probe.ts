/** What must hold for any text whatever: it is analysed in time, and all that is shown of it makes sense. */
import type { Workspace } from '../../server/src/analysis/workspace.ts';
import { reportOf } from '../../server/src/cli/file-report.ts';
import { hoverAt } from '../../server/src/features/reading/hover.ts';
import { outlineOf } from '../../server/src/features/reading/outline.ts';
import { completionsAt } from '../../server/src/features/writing/completion/completion.ts';
import { fixesAt } from '../../server/src/features/writing/fixes.ts';
import { refactoringsAt } from '../../server/src/features/writing/refactorings/refactorings.ts';
import type { Random } from './random.ts';

/** The longest that one input may take, in ms of the processor: a machine that is busy otherwise hangs nothing. */
export const LONGEST = 1000;

/** Time that this process has had on the processor, in ms. */
export function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Words that no text of ours holds, and that no mutation writes into a file. */
const LEFTOVERS = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /;

const WHOLE_JSON = { format: 'json', colour: false, only: undefined } as const;

export interface Probed {
  /** In ms. */
  readonly took: number;
  /** What is wrong, in one line; undefined where all is well. */
  readonly wrong: string | undefined;
}

/** Sets the text and asks everything of it that an editor and the command line ask. */
export function probe(workspace: Workspace, file: string, text: string, random: Random): Probed {
  const start = processorTime();
  let wrong: string | undefined;
  try {
    wrong = wrongIn(workspace, file, text, random);
  } catch (error) {
    wrong = `threw ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
  }
  const took = processorTime() - start;
  return { took, wrong: wrong ?? (took > LONGEST ? `took ${Math.round(took)} ms` : undefined) };
}

function wrongIn(workspace: Workspace, file: string, text: string, random: Random): string | undefined {
  workspace.set(file, text);
  const analysis = workspace.analysis(file);
  if (analysis === undefined) return 'no analysis';
  for (const { message, range, rule } of analysis.findings) {
    if (!(range.start >= 0 && range.start <= range.end && range.end <= text.length)) return `${rule}: outside the text`;
    if (!message.endsWith('.')) return `${rule}: no sentence: ${message}`;
  }
  const spot = random.below(text.length + 1);
  const here = { start: spot, end: Math.min(text.length, spot + 40) };
  const shown = JSON.stringify([
    reportOf(workspace, file, WHOLE_JSON)?.text,
    hoverAt(analysis, spot)?.markdown,
    completionsAt(workspace, analysis, spot),
    fixesAt(analysis, here).map(({ fix }) => fix),
    outlineOf(analysis),
    refactoringsAt(workspace, analysis, spot),
  ]);
  const found = LEFTOVERS.exec(shown);
  if (found !== null) return `shows ${shown.slice(Math.max(0, found.index - 80), found.index + 40)}`;
  // A number that is none is written as null.
  const empty = /"value":null/.exec(shown.replaceAll('\\"', '"'));
  return empty === null ? undefined : 'a value without a number in the JSON';
}
