/** What a rule is. One file holds one rule: what it is about, when it fires, what it says, how it is mended. */

import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import type { ModelCatalogue } from '../evaluate/equipment/models.ts';
import type { EvaluatedSite } from '../evaluate/evaluated-site.ts';
import type { NamedFact } from '../evaluate/facts/declared-fact.ts';
import type { Fact } from '../evaluate/facts/fact.ts';
import type { SiteSettings } from '../evaluate/facts/site-settings.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ReadRecording } from '../evaluate/recorded/visited-recording.ts';
import type { KitModel, SiteModel, VisitModel } from '../model/file-models.ts';
import type { Located } from '../model/located.ts';
import type { ModelProblem } from '../model/problem.ts';
import type { FileKind } from '../model/schema.ts';
import type { PartEdit } from '../syntax/edit.ts';
import type { Origin } from '../syntax/nodes.ts';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

export const RULE_GROUPS = [
  'Reading the file',
  'Quantities',
  'Dryness and heater',
  'Supply',
  'Model limits',
  'Mounting',
  'Outputs and alarms',
  'Uncertainty and checks',
  'Visits',
  'Housekeeping',
] as const;

export type RuleGroup = (typeof RULE_GROUPS)[number];

/** `safe` keeps what the author plainly meant and may run in fix-all; `choice` is offered one by one. */
export type FixKind = 'safe' | 'choice';

export interface FixDraft {
  /** What it does and, for a choice, what follows from it. */
  readonly title: string;
  readonly kind: FixKind;
  /** An edit that cannot be made drops the fix: a place seen through an alias, for example. */
  readonly edits: readonly (RuleEdit | undefined)[];
}

/** An edit in the finding's own file, or in another one. */
export type RuleEdit = PartEdit & { readonly file?: string };

export interface Related {
  readonly message: string;
  readonly origin: Origin;
  /** The file, where it is another than the finding's own. */
  readonly file?: string;
}

/** What a rule finds; the runner adds the rule's name, the severity and the subject. */
export interface FindingDraft {
  /**
   * What is wrong, with number and limit; why; what to do. One or two sentences with their stops. Made when somebody
   * reads it, as related places and fixes are.
   */
  readonly message: () => string;
  readonly origin: Origin;
  /** Where it is not the rule's own. */
  readonly severity?: Severity;
  /** Where it is about another thing than what was looked at: an entry of the file, for example. */
  readonly subject?: string | undefined;
  /** The facts whose numbers the message names. */
  readonly facts?: readonly Fact[];
  readonly related?: () => readonly Related[];
  readonly fixes?: () => readonly FixDraft[];
}

/** Any of our files: what could not be read in it. */
export interface FileView {
  readonly kind: FileKind;
  readonly problems: readonly ModelProblem[];
}

/** Where a tag is given in the workspace. */
export interface TagPlace {
  readonly file: string;
  readonly origin: Origin;
}

/** One site as a whole. */
export interface SiteView {
  readonly file: string;
  readonly model: SiteModel;
  readonly settings: SiteSettings;
  readonly catalogue: ModelCatalogue;
  readonly kits: readonly KitReference[];
  readonly spaces: readonly SpaceEvaluation[];
  readonly points: readonly PointEvaluation[];
  /** The names of all rules. */
  readonly ruleNames: readonly string[];
  /** The tags of points that another site of the workspace gives too. */
  readonly sharedTags: readonly string[];
  /** Every place of a tag in the workspace, this site's own included. */
  placesOfTag(tag: string): readonly TagPlace[];
  /** The kits of the workspace that this site does not name. */
  otherKits(): readonly OtherKit[];
}

export interface OtherKit {
  /** As the site would name it. */
  readonly name: string;
  readonly kit: KitModel;
}

/** A kit that a site names, with what became of it. */
export interface KitReference {
  readonly named: Located<string>;
  /** The URI that the name stands for. */
  readonly file: string;
  readonly state: 'loaded' | 'missing' | 'not-a-kit-name';
  /** Where it is loaded. */
  readonly kit?: KitModel;
}

/** One kit as a whole. */
export interface KitView {
  readonly file: string;
  readonly model: KitModel;
  /** Ids of models that some site of the workspace uses, or undefined while the workspace is not wholly known. */
  readonly usedModels: ReadonlySet<string> | undefined;
}

/** One visit, with the site that it went to. */
export interface VisitView {
  readonly file: string;
  readonly model: VisitModel;
  readonly visited: VisitedSite;
  /** Absent where the visit names no recording, or nothing says of which space it is. */
  readonly recording: ReadRecording | undefined;
}

/** What became of the site that a visit names. */
export type VisitedSite =
  /** Nothing can be said: no id can be read, or not every site is known yet. */
  | { readonly state: 'not-known' }
  /** No site has the id. */
  | { readonly state: 'missing'; readonly named: Located<string>; readonly siteIds: readonly string[] }
  /** Several sites have the id. */
  | { readonly state: 'ambiguous'; readonly named: Located<string>; readonly sites: readonly SiteIdPlace[] }
  | { readonly state: 'found'; readonly site: EvaluatedSite };

/** Where a site file gives its id. */
export interface SiteIdPlace {
  readonly file: string;
  readonly origin: Origin;
}

/** The acceptance comments of a file that accept nothing. */
export interface AcceptanceView {
  readonly idle: readonly IdleAcceptance[];
  /** True where all of the file and of its kits could be read, so that no finding is wanting. */
  readonly whole: boolean;
  /** The names of all rules. */
  readonly ruleNames: readonly string[];
}

export interface IdleAcceptance {
  readonly origin: Origin;
  /** The comment as it was typed. */
  readonly text: string;
  /** The point or space whose line it is on or above; undefined where that is none. */
  readonly subject: string | undefined;
  readonly rule: string;
  /** Empty where none is given. */
  readonly reason: string;
}

/** What a rule looks at. A rule may look at several things. */
export interface RuleChecks {
  readonly file?: (view: FileView) => readonly FindingDraft[];
  readonly site?: (view: SiteView) => readonly FindingDraft[];
  readonly space?: (view: SpaceEvaluation) => readonly FindingDraft[];
  readonly point?: (view: PointEvaluation) => readonly FindingDraft[];
  readonly kit?: (view: KitView) => readonly FindingDraft[];
  readonly visit?: (view: VisitView) => readonly FindingDraft[];
  readonly acceptances?: (view: AcceptanceView) => readonly FindingDraft[];
}

export interface Rule {
  /** Kebab-case and fixed; also the name of the file and of the fixture's folder. */
  readonly name: string;
  readonly group: RuleGroup;
  readonly severity: Severity;
  /** One line: what it reports. */
  readonly title: string;
  /** What happens on site where it is not heeded. */
  readonly why: string;
  /** How a person mends it. */
  readonly mend: string;
  /** What it leaves alone, where a reader may expect otherwise. */
  readonly leavesAlone?: string;
  /** Standards and publications, or 'common practice, no source'. */
  readonly sources: readonly string[];
  /** What it reads, as its page lists it; a test holds it to what its check asks for. */
  readonly facts: readonly NamedFact[];
  /** The kinds of fix it may offer. */
  readonly fixes: readonly FixKind[];
  readonly check: RuleChecks;
}
