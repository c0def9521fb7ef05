/** The packs of the samples, as HTML that was read back, and what else is known of each site. */
import type { Analysis } from '../../server/src/analysis/analysis.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import { json } from '../../server/src/cli/formats/json.ts';
import type { PackDocument } from '../../server/src/report/document.ts';
import { packHtml } from '../../server/src/report/html-pack.ts';
import { packOf } from '../../server/src/report/pack.ts';
import { analysisOf, SAMPLE_NAMES, sampleWorkspace } from '../samples/sample-files.ts';
import { type HtmlElement, readHtml } from './read-html.ts';

export interface SamplePack {
  readonly name: string;
  readonly analysis: Analysis;
  readonly html: string;
  readonly root: HtmlElement;
}

export const REVISION = 'commit 0123abc';

export function packOfAnalysis(analysis: Analysis): PackDocument {
  const pack = packOf({ analysis, revision: REVISION });
  if (pack === undefined) throw new Error(`${analysis.file} is no site`);
  return pack;
}

const WORKSPACE = sampleWorkspace();

export const SAMPLE_PACKS: readonly SamplePack[] = SAMPLE_NAMES.filter((name) => name.endsWith('.dewsite.yaml')).map(
  (name) => {
    const analysis = analysisOf(WORKSPACE, name);
    const html = packHtml(packOfAnalysis(analysis));
    return { name, analysis, html, root: readHtml(html) };
  },
);

/** What `check --format json` says of a file. */
export function checkJson(analysis: Analysis) {
  const { findings, accepted } = analysis;
  const text = json.ofFile(
    { path: 'x', analysis, findings, accepted },
    { colour: false, fileNamed: analysis.fileNamed },
  );
  return JSON.parse(text) as {
    readonly findings: readonly { readonly message: string; readonly severity: string }[];
    readonly subjects: readonly {
      readonly subject: string;
      readonly facts: Readonly<
        Record<
          string,
          {
            readonly title: string;
            readonly text?: string;
            readonly missing?: string;
            readonly sources: readonly string[];
          }
        >
      >;
    }[];
  };
}

/** The analysis of one site file with its kit. */
export function analysisOfTexts(site: string, kit: string): Analysis {
  const workspace = new Workspace({ today: () => '2026-11-25' });
  workspace.set('file:///a.dewsite.yaml', site);
  workspace.set('file:///kits/fennmoor.dewkit.yaml', kit);
  const analysis = workspace.analysis('file:///a.dewsite.yaml');
  if (analysis === undefined) throw new Error('no site');
  return analysis;
}
