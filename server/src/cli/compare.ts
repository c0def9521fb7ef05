/** `dewright compare OLD NEW`: what has changed in meaning between two versions of a site. */
import { type AnalysedSite, analysedSite, compareSites } from '../features/comparison/compare-sites.ts';
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

function analysed(word: string): AnalysedSite {
  const { workspace, file } = siteVersion(word);
  const site = analysedSite(workspace.analysis(file));
  if (!site.ok) throw new CallProblem(`${word}: ${site.problem}`);
  return site.value;
}
