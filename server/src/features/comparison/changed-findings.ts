/** Which findings came and went between two versions of a site, and which were accepted. */
import type { AcceptedFinding } from '../../analysis/acceptance.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { compareFindings, type Finding } from '../../analysis/finding.ts';
import { groupedBy } from '../../base/grouped.ts';
import type { Severity } from '../../rules/rule.ts';
import { type PlaceNow, pathIn } from './place-path.ts';

export interface ChangedFinding {
  readonly kind: 'came' | 'went' | 'accepted' | 'reopened' | 'reason' | 'severity';
  readonly rule: string;
  /** Of the new version, where the finding is in it. */
  readonly severity: Severity;
  /** With its name in the new version. */
  readonly subject: string;
  readonly message: string;
  /** Why it is accepted, in the new version. */
  readonly reason?: string;
}

/** Open, or accepted with a reason. */
type Told = Finding & Partial<Pick<AcceptedFinding, 'reason'>>;

/**
 * A finding of one rule at one place is the same finding, whatever numbers it names: the changed facts tell of those.
 * @param nowCalled what a subject of the old version is called in the new one
 */
export function changedFindings(
  before: Analysis,
  after: Analysis,
  nowCalled: (subject: string) => string,
  nowAt: PlaceNow,
): readonly ChangedFinding[] {
  const old = byPlace(before, nowAt);
  const now = byPlace(after, (path) => path);
  const changes: ChangedFinding[] = [];
  for (const key of new Set([...now.keys(), ...old.keys()])) {
    const [earlier, later] = [old.get(key) ?? [], now.get(key) ?? []];
    for (let index = 0; index < Math.max(earlier.length, later.length); index++) {
      changes.push(...changeOf(earlier[index], later[index], nowCalled));
    }
  }
  return changes;
}

function byPlace({ findings, accepted, parsed }: Analysis, nowAt: PlaceNow): ReadonlyMap<string, readonly Told[]> {
  const told: readonly Told[] = [...findings, ...accepted].sort(compareFindings);
  return groupedBy(told, ({ rule, range }) => JSON.stringify([rule, nowAt(pathIn(parsed.tree, range))]));
}

function changeOf(
  before: Told | undefined,
  after: Told | undefined,
  nowCalled: (subject: string) => string,
): readonly ChangedFinding[] {
  if (after === undefined) {
    if (before === undefined) return [];
    const { rule, severity, subject, message } = before;
    return [{ kind: 'went', rule, severity, subject: nowCalled(subject), message }];
  }
  const kind = kindOf(before, after);
  if (kind === undefined) return [];
  const { rule, severity, subject, message, reason } = after;
  return [{ kind, rule, severity, subject, message, ...(reason === undefined ? {} : { reason }) }];
}

function kindOf(before: Told | undefined, after: Told): ChangedFinding['kind'] | undefined {
  if (before === undefined) return after.reason === undefined ? 'came' : 'accepted';
  if (before.reason === undefined && after.reason !== undefined) return 'accepted';
  if (before.reason !== undefined && after.reason === undefined) return 'reopened';
  if (before.reason !== after.reason) return 'reason';
  return before.severity === after.severity ? undefined : 'severity';
}
