/** Runs the rules over what they look at and turns their drafts into findings. */
import { madeOnce } from '../base/remembered.ts';
import type { TextRange } from '../base/text-range.ts';
import type { Severity as SiteSeverity } from '../model/model-types.generated.ts';
import { RULES } from '../rules/registry.generated.ts';
import type { FindingDraft, FixDraft, Related, Rule, RuleChecks } from '../rules/rule.ts';
import type { Origin } from '../syntax/nodes.ts';
import type { FileEdit, Finding, Fix, RelatedPlace } from './finding.ts';

/** A draft with the rule that made it and what it is about. */
export interface RawFinding {
  readonly rule: Rule;
  readonly subject: string;
  readonly draft: FindingDraft;
}

type Look = keyof RuleChecks;
type ViewOf<Kind extends Look> = Parameters<NonNullable<RuleChecks[Kind]>>[0];

const RULES_BY_LOOK: Readonly<Record<Look, readonly Rule[]>> = {
  file: RULES.filter(({ check }) => check.file !== undefined),
  site: RULES.filter(({ check }) => check.site !== undefined),
  space: RULES.filter(({ check }) => check.space !== undefined),
  point: RULES.filter(({ check }) => check.point !== undefined),
  kit: RULES.filter(({ check }) => check.kit !== undefined),
  visit: RULES.filter(({ check }) => check.visit !== undefined),
  acceptances: RULES.filter(({ check }) => check.acceptances !== undefined),
};

/** Runs every rule that looks at this kind of thing. */
export function runRules<Kind extends Look>(look: Kind, view: ViewOf<Kind>, subject: string): readonly RawFinding[] {
  const found: RawFinding[] = [];
  for (const rule of RULES_BY_LOOK[look]) {
    const check = rule.check[look] as ((view: ViewOf<Kind>) => readonly FindingDraft[]) | undefined;
    for (const draft of check?.(view) ?? []) found.push({ rule, subject: draft.subject ?? subject, draft });
  }
  return found;
}

/** Finds the place of an origin in any file of the workspace. */
export type PlaceFinder = (file: string, origin: Origin) => TextRange | undefined;

/**
 * @param severityOf what the site says of a rule, if anything
 * @returns undefined where the site switches the rule off
 */
export function settle(
  { rule, subject, draft }: RawFinding,
  file: string,
  placeOf: PlaceFinder,
  severityOf: (rule: string) => SiteSeverity | undefined,
): Finding | undefined {
  const wanted = severityOf(rule.name);
  const range = placeOf(file, draft.origin);
  if (wanted === 'off' || range === undefined) return undefined;
  const message = madeOnce(draft.message);
  const related = madeOnce(() => relatedPlaces(draft, file, placeOf));
  const fixes = madeOnce(() => (draft.fixes?.() ?? []).flatMap((fix) => settleFix(fix, file, placeOf) ?? []));
  return {
    rule: rule.name,
    severity: wanted ?? draft.severity ?? rule.severity,
    get message() {
      return message();
    },
    subject,
    range,
    facts: draft.facts ?? [],
    get related() {
      return related();
    },
    get fixes() {
      return fixes();
    },
  };
}

function relatedPlaces(draft: FindingDraft, file: string, placeOf: PlaceFinder): readonly RelatedPlace[] {
  const { definedAt } = draft.origin;
  const alias = definedAt === undefined ? [] : [{ message: 'The alias stands for this.', origin: definedAt }];
  return [...alias, ...(draft.related?.() ?? [])].flatMap(({ message, origin, ...other }: Related) => {
    const inFile = other.file ?? file;
    const range = placeOf(inFile, origin);
    return range === undefined ? [] : [{ message, file: inFile, range }];
  });
}

function settleFix(fix: FixDraft, file: string, placeOf: PlaceFinder): Fix | undefined {
  const edits: FileEdit[] = [];
  for (const edit of fix.edits) {
    const range = edit === undefined ? undefined : placeOf(edit.file ?? file, edit);
    if (edit === undefined || range === undefined) return undefined;
    edits.push({ file: edit.file ?? file, range, newText: edit.newText });
  }
  return edits.length === 0 ? undefined : { title: fix.title, kind: fix.kind, edits };
}
