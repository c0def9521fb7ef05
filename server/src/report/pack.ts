/** The handover pack of a site: what was built and why it is right, how it is put to work, checked and kept. */
import type { Analysis } from '../analysis/analysis.ts';
import type { PackDocument } from './document.ts';
import { told } from './document.ts';
import { findingsSection } from './findings-section.ts';
import { equipmentSection, siteBlocks } from './job-sections.ts';
import { pointSection } from './point-section.ts';
import { sourcesSection } from './sources-section.ts';
import { spaceSection } from './space-section.ts';

/** An analysis of a site file, with what the pack says of itself. */
export interface PackRequest {
  readonly analysis: Analysis;
  /** Which version of the files it was made from: a commit, or the hash of what they hold. */
  readonly revision: string;
}

/** Undefined for what is no site. */
export function packOf({ analysis, revision }: PackRequest): PackDocument | undefined {
  if (analysis.content.kind !== 'site') return undefined;
  const { site } = analysis.content;
  const { header, today } = site.settings;
  const name = header?.title?.value ?? header?.id?.value ?? 'Site';
  const made = `Made on ${today} from ${revision}`;
  return {
    title: `${name}: handover pack`,
    revision: made,
    opening: [{ kind: 'paragraph', text: [told(`${made}.`)] }, ...siteBlocks(analysis, site)],
    sections: [
      equipmentSection(site),
      ...[...site.spaces.values()].map((space) => spaceSection(space, site)),
      ...[...site.points.values()].map((point) => pointSection(point, site, analysis)),
      findingsSection(analysis, site.points),
      sourcesSection(site),
    ],
  };
}

/** The files that a pack is made from, with their texts: the site, its kits, the visits to it. */
export function packFiles({ file, content, fileNamed }: Analysis): readonly (readonly [uri: string, text: string])[] {
  const { kits, visits } = content.kind === 'site' ? content.site : { kits: [], visits: [] };
  const uris = [file, ...kits.map((kit) => kit.file), ...visits.map((visit) => visit.file)];
  return uris.flatMap((uri) => {
    const text = fileNamed(uri)?.text;
    return text === undefined ? [] : [[uri, text] as const];
  });
}
