/** The findings of each point or space, and how many of each severity there are. */
import type { Analysis } from '../../analysis/analysis.ts';
import type { Finding } from '../../analysis/finding.ts';
import { groupedBy } from '../../base/grouped.ts';
import { remembered } from '../../base/remembered.ts';
import { SEVERITIES } from '../../rules/rule.ts';

export const findingsBySubject = remembered(({ findings }: Analysis) => groupedBy(findings, ({ subject }) => subject));

/** `1 error, 2 warnings`; nothing where there are none. */
export function countsInWords(findings: readonly Finding[]): string {
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    const isPlural = count > 1 && severity !== 'information';
    return count === 0 ? [] : [`${count} ${severity}${isPlural ? 's' : ''}`];
  });
  return counts.join(', ');
}
