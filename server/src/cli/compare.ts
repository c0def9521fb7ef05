/** `dewright compare OLD NEW`: what has changed in meaning between two versions of a site. */
import { type AnalysedSite, compareSites } from '../features/comparison/compare-sites.ts';
import { comparisonJson, comparisonText } from '../features/comparison/comparison-text.ts';
import { SEVERITIES } from '../rules/rule.ts';
import { type Call, choice } from './call.ts';
import { reaches } from './file-report.ts';
import { CallProblem } from './problem.ts';
import { siteVersion } from './revision.ts';

/** Findings that came count against `--fail-on`. */
export function compare(call: Call): number {
  const format = choice(call, 'format', ['text', 'json'] as const, 'text');
  const limit = choice(call, 'fail-on', [...SEVERITIES, 'never'] as const, 'error');
  const [old, now, ...more] = call.rest;
  if (old === undefined || now === undefined || more.length > 0) {
    throw new CallProblem(
      'compare takes an old and a new version of a site: two files, or REV:PATH for a git revision',
    );
  }
  const comparison = compareSites(analysed(old), analysed(now));
  process.stdout.write(`${format === 'json' ? comparisonJson(comparison) : comparisonText(comparison)}\n`);
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const { kind, severity } of comparison.findings) if (kind === 'came') counts[severity] += 1;
  return reaches(counts, limit) ? 1 : 0;
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
