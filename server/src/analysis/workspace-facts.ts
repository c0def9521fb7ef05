import type { KnownRecording } from '../evaluate/recorded/visited-recording.ts';
import type { SiteEvaluation, Surroundings } from './site-analysis.ts';

/** What kits and visits look up in the rest of the workspace. */
export interface WorkspaceFacts extends Surroundings {
  /** Ids of the models of a kit that sites use; undefined while not every site is known. */
  usedModels(kit: string): ReadonlySet<string> | undefined;
  /** The sites that have an id, by the URIs of their files. */
  sitesWithId(id: string): readonly string[];
  /** The ids of all sites; undefined while not every site is known. */
  siteIds(): readonly string[] | undefined;
  siteEvaluation(file: string): SiteEvaluation | undefined;
  /** What was read of the recording that a visit names. */
  recordingOf(visit: string): KnownRecording | undefined;
}
