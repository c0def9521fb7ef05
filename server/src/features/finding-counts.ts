/** The findings of each point or space, and how many of each severity there are. */
import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { remembered } from '../base/remembered.ts';
import { SEVERITIES } from '../rules/rule.ts';

export const findingsBySubject = remembered(({ findings }: Analysis): ReadonlyMap<string, readonly Finding[]> => {
  const bySubject = new Map<string, Finding[]>();
  for (const finding of findings) {
    const known = bySubject.get(finding.subject);
    if (known === undefined) bySubject.set(finding.subject, [finding]);
    else known.push(finding);
  }
  return bySubject;
});

/** `1 error, 2 warnings`; nothing where there are none. */
export function countsInWords(findings: readonly Finding[]): string {
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    const isPlural = count > 1 && severity !== 'information';
    return count === 0 ? [] : [`${count} ${severity}${isPlural ? 's' : ''}`];
  });
  return counts.join(', ');
}
