/** One site with all that is computed for it: what its own rules read, and those of its visits. */
import type { SiteModel } from '../model/file-models.ts';
import type { SpaceEvaluation } from './air/space.ts';
import type { ModelCatalogue } from './equipment/models.ts';
import type { SiteSettings } from './facts/site-settings.ts';
import type { PointEvaluation } from './point.ts';
import type { VisitOfSite } from './resolved/visit-reading.ts';

export interface EvaluatedSite {
  /** URI of the site file. */
  readonly file: string;
  readonly model: SiteModel;
  readonly settings: SiteSettings;
  readonly catalogue: ModelCatalogue;
  readonly spaces: ReadonlyMap<string, SpaceEvaluation>;
  readonly points: ReadonlyMap<string, PointEvaluation>;
  /** The visits to it. */
  readonly visits: readonly VisitOfSite[];
}
