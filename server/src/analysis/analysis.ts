/** What is known of one file at one moment: the one thing that every feature, the command line and reports read. */

import { type ReadRecording, readRecording } from '../evaluate/recorded/visited-recording.ts';
import { type KitModel, kitModelOf, type VisitModel, visitModelOf } from '../model/file-models.ts';
import type { Severity } from '../model/model-types.generated.ts';
import type { VisitedSite } from '../rules/rule.ts';
import { RULE_NAMES } from '../rules/rule-names.ts';
import { type AcceptedFinding, acceptancesOf, sortByAcceptance } from './acceptance.ts';
import { baseName } from './file-location.ts';
import { compareFindings, type Finding } from './finding.ts';
import type { ParsedFile } from './parsed-file.ts';
import { type PlaceFinder, type RawFinding, runRules, settle } from './run-rules.ts';
import { evaluateSite, findInSite, type SiteEvaluation } from './site-analysis.ts';
import { visitedSite } from './visited-site.ts';
import type { WorkspaceFacts } from './workspace-facts.ts';

export interface Analysis {
  readonly file: string;
  readonly parsed: ParsedFile;
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
  readonly content: AnalysedContent;
  /** This file, or another that the analysis has read: a kit. */
  fileNamed(file: string): ParsedFile | undefined;
}

export type AnalysedContent =
  | { readonly kind: 'site'; readonly site: SiteEvaluation; readonly recordings: readonly SiteRecording[] }
  | { readonly kind: 'kit'; readonly kit: KitModel }
  | {
      readonly kind: 'visit';
      readonly visit: VisitModel;
      readonly visited: VisitedSite;
      readonly recording: ReadRecording | undefined;
    };

/** A recording of one of a site's spaces, and the visit that names it. */
export interface SiteRecording extends ReadRecording {
  readonly visit: string;
}

/** @param before an earlier analysis of the file; the result is the same without it, only later */
export function analyse(parsed: ParsedFile, workspace: WorkspaceFacts, before?: Analysis): Analysis {
  const { content, raw, severities } = findIn(parsed, workspace, before);
  const placeOf: PlaceFinder = (file, origin) => {
    if (file === parsed.file) return parsed.rangeOf(origin);
    // Asked late, another file may have been let go or changed since.
    return workspace.parsed(file)?.rangeIfThere(origin);
  };
  const settled = (found: readonly RawFinding[]): Finding[] =>
    found.flatMap((finding) => settle(finding, parsed.file, placeOf, severities) ?? []);
  const acceptances = acceptancesOf(parsed);
  const { open, accepted, unused } = sortByAcceptance(settled(raw), acceptances, parsed);
  const idle = new Set([...unused, ...acceptances.filter(({ reason }) => reason === '')]);
  const view = { idle: [...idle], whole: isWhole(parsed, content), ruleNames: RULE_NAMES };
  const notes = settled(runRules('acceptances', view, baseName(parsed.file)));
  return {
    file: parsed.file,
    parsed,
    findings: [...open, ...notes].sort(compareFindings),
    accepted,
    content,
    fileNamed: (file) => (file === parsed.file ? parsed : workspace.parsed(file)),
  };
}

/** True where the file and what it refers to could be read, so that every rule had its say. */
function isWhole({ model }: ParsedFile, content: AnalysedContent): boolean {
  const isRead = model.problems.every(({ rule }) => rule === 'difference-in-degrees');
  if (content.kind === 'site') return isRead && content.site.catalogue.complete;
  if (content.kind === 'kit') return isRead;
  return isRead && content.visited.state === 'found' && content.visited.site.catalogue.complete;
}

interface Found {
  readonly content: AnalysedContent;
  readonly raw: readonly RawFinding[];
  severities(rule: string): Severity | undefined;
}

const AS_THE_RULE_SAYS = (): undefined => undefined;

function findIn(parsed: ParsedFile, workspace: WorkspaceFacts, before: Analysis | undefined): Found {
  const { kind, model, file } = parsed;
  const view = { kind, problems: model.problems };
  if (kind === 'site') {
    const known = before?.content.kind === 'site' ? before.content.site : undefined;
    const site = evaluateSite(parsed, workspace, known);
    const { ruleSeverities } = site.settings;
    return {
      content: { kind, site, recordings: recordingsOf(site, workspace) },
      raw: findInSite(parsed, site, workspace),
      severities: (rule) => ruleSeverities.get(rule)?.value,
    };
  }
  if (kind === 'kit') {
    const kit = kitModelOf(model);
    const subject = kit.header?.value.id?.value ?? baseName(file);
    const raw = [
      ...runRules('file', view, subject),
      ...runRules('kit', { file, model: kit, usedModels: workspace.usedModels(file) }, subject),
    ];
    return { content: { kind, kit }, raw, severities: AS_THE_RULE_SAYS };
  }
  const visit = visitModelOf(model);
  const visited = visitedSite(visit, workspace);
  const recording =
    visited.state === 'found' ? readRecording(visit, visited.site, workspace.recordingOf(file)) : undefined;
  const raw = [
    ...runRules('file', view, baseName(file)),
    ...runRules('visit', { file, model: visit, visited, recording }, baseName(file)),
  ];
  const ofSite = visited.state === 'found' ? visited.site.settings.ruleSeverities : undefined;
  return {
    content: { kind: 'visit', visit, visited, recording },
    raw,
    severities: (rule) => ofSite?.get(rule)?.value,
  };
}

function recordingsOf(site: SiteEvaluation, workspace: WorkspaceFacts): readonly SiteRecording[] {
  return workspace.visitsTo(site.file).flatMap(({ file: visit, model }) => {
    const recording = readRecording(model, site, workspace.recordingOf(visit));
    return recording === undefined ? [] : { ...recording, visit };
  });
}
