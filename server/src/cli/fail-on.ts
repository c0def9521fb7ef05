/** `--fail-on`: how severe a finding has to be for a call to end with 1. */
import { SEVERITIES, type Severity } from '../rules/rule.ts';
import { type Call, choice } from './call.ts';

export type FailLimit = Severity | 'never';

export type SeverityCounts = Readonly<Record<Severity, number>>;

export function failLimitOf(call: Call): FailLimit {
  return choice(call, 'fail-on', [...SEVERITIES, 'never'], 'error');
}

export function countsOf(severities: readonly Severity[]): SeverityCounts {
  const counts = { error: 0, warning: 0, information: 0, hint: 0 };
  for (const severity of severities) counts[severity] += 1;
  return counts;
}

/** 1 where a finding is as severe as the limit or more. */
export function exitStatus(counts: SeverityCounts, limit: FailLimit): 0 | 1 {
  if (limit === 'never') return 0;
  return SEVERITIES.slice(0, SEVERITIES.indexOf(limit) + 1).some((severity) => counts[severity] > 0) ? 1 : 0;
}
