/**
 * The one mutable place: the texts of all known files. Everything else is computed from one moment of it, on demand,
 * and kept while nothing it depends on changes.
 */

import { lookingAt } from '../base/internal-error.ts';
import type { KnownRecording, ReadRecording } from '../evaluate/recorded/visited-recording.ts';
import type { VisitOfSite } from '../evaluate/resolved/visit-reading.ts';
import { siteModelOf, visitModelOf } from '../model/file-models.ts';
import { type FileKind, fileKindOf } from '../model/schema.ts';
import type { TagPlace } from '../rules/rule.ts';
import { type Analysis, analyse } from './analysis.ts';
import { KeptFiles } from './kept-files.ts';
import { type ParsedFile, parseSource } from './parsed-file.ts';
import type { SiteEvaluation } from './site-analysis.ts';
import { systemDay } from './today.ts';
import type { WorkspaceFacts } from './workspace-facts.ts';
import { type FileWords, type ModelUse, WorkspaceIndex } from './workspace-index.ts';

interface Source {
  readonly kind: FileKind;
  text: string;
  /** Changes with the text. */
  revision: number;
  /** The last version that was parsed; stale where its text is not the text. */
  parsed: ParsedFile | undefined;
  analysis: Analysis | undefined;
  /** What the analysis was made from. */
  analysedFrom: string;
  /** Of a visit: what was read of the recording that it names. */
  recording: KnownRecording | undefined;
}

/** What is said in files that are known to others only. */
export interface Elsewhere {
  /** Which models sites use, by the kit that they name for it; undefined where nothing can be called unused. */
  readonly uses: readonly ModelUse[] | undefined;
  readonly siteIds: readonly string[];
}

export interface WorkspaceOptions {
  /** The present day, `YYYY-MM-DD`. It is asked before every analysis, so that a new day needs no restart. */
  readonly today?: () => string;
  /** How many characters of files are kept parsed; what was used longest ago is parsed anew when it is asked for. */
  readonly mostParsed?: number;
}

/** About 100 sites of 2,000 lines; a parsed file takes some 20 bytes of memory for a character. */
const MOST_PARSED = 8_000_000;

export class Workspace {
  readonly #today: () => string;
  readonly #sources = new Map<string, Source>();
  readonly #index = new WorkspaceIndex((file) => this.parsed(file));
  readonly #kept: KeptFiles;
  /** The analysis of a visit asks for that of its site. */
  #analysesUnderWay = 0;
  #revision = 0;
  /** Changes where files come and go. */
  #listRevision = 0;
  /** Changes with any kit: a site is offered the models of kits that it does not name yet. */
  #kitRevision = 0;
  /** What is said in files that others know; undefined while not every site is known. */
  #elsewhere: Elsewhere | undefined;

  constructor({ today = systemDay, mostParsed = MOST_PARSED }: WorkspaceOptions = {}) {
    this.#today = today;
    this.#kept = new KeptFiles(mostParsed);
  }

  /** Sets or replaces the text of a file. A file whose name is none of ours is left out. */
  set(file: string, text: string): void {
    const kind = fileKindOf(file);
    const known = this.#sources.get(file);
    if (kind === undefined || known?.text === text) return;
    const revision = ++this.#revision;
    if (kind === 'kit') this.#kitRevision = revision;
    if (known === undefined) {
      this.#listRevision = revision;
      this.#sources.set(file, {
        kind,
        text,
        revision,
        parsed: undefined,
        analysis: undefined,
        analysedFrom: '',
        recording: undefined,
      });
    } else Object.assign(known, { text, revision });
    this.#index.changed(file);
  }

  /** The recording that a visit names. Only where one is named is anything computed. */
  recordingOf(visit: string): ReadRecording | undefined {
    const parsed = this.#sources.get(visit)?.kind === 'visit' ? this.parsed(visit) : undefined;
    if (parsed === undefined || visitModelOf(parsed.model).log === undefined) return undefined;
    const content = this.analysis(visit)?.content;
    return content?.kind === 'visit' ? content.recording : undefined;
  }

  /** Says what was read of the recording that a visit names: the visit and its site are seen anew. */
  setRecording(visit: string, recording: KnownRecording): void {
    const source = this.#sources.get(visit);
    if (source === undefined) return;
    source.recording = recording;
    source.revision = ++this.#revision;
  }

  /** The log of a visit is another now. */
  forgetRecording(visit: string): void {
    const source = this.#sources.get(visit);
    if (source?.recording !== undefined) Object.assign(source, { recording: undefined, revision: ++this.#revision });
  }

  remove(file: string): void {
    if (!this.#sources.delete(file)) return;
    this.#kept.forget(file);
    this.#listRevision = ++this.#revision;
    this.#index.changed(file);
  }

  /** Says that every file of the workspace has been set, so that what is unused or missing can be told. */
  markWhole(elsewhere: Elsewhere = { uses: [], siteIds: [] }): void {
    this.#elsewhere = elsewhere;
    this.#listRevision = ++this.#revision;
  }

  /** What a site or visit says that concerns other files. */
  wordsOf(file: string): FileWords | undefined {
    return this.#index.wordsOf(file);
  }

  has(file: string): boolean {
    return this.#sources.has(file);
  }

  files(kind?: FileKind): readonly string[] {
    const wanted = [...this.#sources].flatMap(([file, source]) =>
      kind === undefined || source.kind === kind ? [file] : [],
    );
    return wanted.sort();
  }

  parsed(file: string): ParsedFile | undefined {
    const source = this.#sources.get(file);
    if (source === undefined) return undefined;
    if (source.parsed?.text !== source.text) source.parsed = parseSource(file, source.kind, source.text, source.parsed);
    this.#kept.use(file, source.text.length);
    this.#makeRoom(file);
    return source.parsed;
  }

  /** What was computed of a file is no longer looked at: it goes as soon as the room is needed. */
  release(file: string): void {
    const source = this.#sources.get(file);
    if (source !== undefined) source.analysis = undefined;
  }

  analysis(file: string): Analysis | undefined {
    const source = this.#sources.get(file);
    const parsed = this.parsed(file);
    if (source === undefined || parsed === undefined) return undefined;
    const from = this.stateOf(file);
    if (source.analysis !== undefined && source.analysedFrom === from) return source.analysis;
    source.analysis = lookingAt(file, () => this.#analyse(parsed, source.analysis));
    source.analysedFrom = from;
    this.#makeRoom(file);
    return source.analysis;
  }

  /** The analysis of a file as it would be with another text; nothing is kept of it. */
  analysisIf(file: string, text: string): Analysis | undefined {
    const before = this.analysis(file);
    if (before === undefined) return undefined;
    return this.#analyse(parseSource(file, before.parsed.kind, text, before.parsed), before);
  }

  /**
   * What the analysis of a file depends on, as one word: its text, the kits, the day, the files of the workspace, what
   * they say to each other, and the texts of those that share a tag with it; of a site the texts of its visits, and of
   * a visit all that its site depends on. While it stands, so does the analysis.
   */
  stateOf(file: string): string {
    const revisionOf = (of: string): number => this.#sources.get(of)?.revision ?? 0;
    const read = [...this.#index.filesSharingTags(file), ...this.#index.visitsTo(file)].map(revisionOf);
    const ofAll = [this.#today(), this.#listRevision, this.#kitRevision, this.#index.revision()];
    const ofSites = this.#index.sitesOf(file).map((site) => this.stateOf(site));
    return [revisionOf(file), ...ofAll, ...read, ...ofSites].join(' ');
  }

  /** The kits that a site or the site of a visit names, whether they are known yet or not. */
  kitsOf(file: string): readonly string[] {
    return [file, ...this.sitesOf(file)].flatMap((site) => this.#index.wordsOf(site)?.kits ?? []);
  }

  /** The sites that a visit may have gone to: those that have the id it names. */
  sitesOf(visit: string): readonly string[] {
    return this.#index.sitesOf(visit);
  }

  /** The visits to a site. */
  visitsTo(site: string): readonly string[] {
    return this.#index.visitsTo(site);
  }

  #analyse(parsed: ParsedFile, before: Analysis | undefined): Analysis {
    this.#analysesUnderWay++;
    try {
      return analyse(parsed, this.#facts(), before);
    } finally {
      this.#analysesUnderWay--;
    }
  }

  #facts(): WorkspaceFacts {
    return {
      today: this.#today(),
      parsed: (file) => this.parsed(file),
      kitFiles: this.files('kit'),
      sharedTagsOf: (site) => this.#index.sharedTagsOf(site),
      placesOfTag: (tag) => this.#placesOfTag(tag),
      usedModels: (kit) => this.#usedModels(kit),
      visitsTo: (site) => this.#index.visitsTo(site).flatMap((file) => this.#visit(file)),
      sitesWithId: (id) => this.#index.sitesWithId(id),
      siteIds: () => this.#elsewhere && [...this.#index.siteIds(), ...this.#elsewhere.siteIds],
      siteEvaluation: (file) => this.#siteEvaluation(file),
      recordingOf: (visit) => this.#sources.get(visit)?.recording,
    };
  }

  #placesOfTag(tag: string): readonly TagPlace[] {
    return this.#index.filesWithTag(tag).flatMap((file) => {
      const parsed = this.parsed(file);
      const point = parsed === undefined ? undefined : siteModelOf(parsed.model).points.get(tag);
      return point === undefined ? [] : { file, origin: point.keyOrigin };
    });
  }

  /** While an analysis is made, places in all files that it has looked at must hold. */
  #makeRoom(wanted: string): void {
    if (this.#analysesUnderWay > 0) return;
    for (const file of this.#kept.makeRoom(wanted)) {
      const source = this.#sources.get(file);
      if (source !== undefined) Object.assign(source, { parsed: undefined, analysis: undefined });
    }
  }

  #visit(file: string): readonly VisitOfSite[] {
    const parsed = this.parsed(file);
    return parsed === undefined ? [] : [{ file, model: visitModelOf(parsed.model) }];
  }

  #siteEvaluation(file: string): SiteEvaluation | undefined {
    const content = this.analysis(file)?.content;
    return content?.kind === 'site' ? content.site : undefined;
  }

  #usedModels(kit: string): ReadonlySet<string> | undefined {
    const { uses } = this.#elsewhere ?? {};
    if (uses === undefined) return undefined;
    return new Set([...this.#index.uses(), ...uses].flatMap(([of, model]) => (of === kit ? [model] : [])));
  }
}
