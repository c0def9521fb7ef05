/** `dewright compare OLD NEW`: what has changed in meaning between two versions of a site. */
import { type AnalysedSite, compareSites } from '../features/comparison/compare-sites.ts';
import { comparisonJson, comparisonText } from '../features/comparison/comparison-text.ts';
import { type Call, choice } from './call.ts';
import { countsOf, exitStatus, failLimitOf } from './fail-on.ts';
import { CallProblem } from './problem.ts';
import { siteVersion } from './revision.ts';

/** Findings that came count against `--fail-on`. */
export function compare(call: Call): number {
  const format = choice(call, 'format', ['text', 'json'], 'text');
  const limit = failLimitOf(call);
  const [old, now, ...more] = call.rest;
  if (old === undefined || now === undefined || more.length > 0) {
    throw new CallProblem(
      'compare takes an old and a new version of a site: two files, or REV:PATH for a git revision',
    );
  }
  const comparison = compareSites(analysed(old), analysed(now));
  process.stdout.write(`${format === 'json' ? comparisonJson(comparison) : comparisonText(comparison)}\n`);
  const came = comparison.findings.filter(({ kind }) => kind === 'came');
  return exitStatus(countsOf(came.map(({ severity }) => severity)), limit);
}

/** Of a text that does not parse, whole entries would seem to be gone. */
function analysed(word: string): AnalysedSite {
  const { workspace, file } = siteVersion(word);
  const analysis = workspace.analysis(file);
  if (analysis?.content.kind !== 'site') throw new CallProblem(`${word}: not a site`);
  const { model, lines, rangeOf } = analysis.parsed;
  const broken = model.problems.find(({ rule }) => rule === 'yaml-syntax');
  if (broken !== undefined) {
    const { line } = lines.positionAt(rangeOf(broken.origin).start);
    throw new CallProblem(`${word}: line ${line + 1} does not parse, so that it cannot be compared`);
  }
  return { analysis, site: analysis.content.site };
}
