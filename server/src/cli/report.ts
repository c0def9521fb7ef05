/** `dewright report SITE --out FILE`: the handover pack of a site as HTML, PDF or Markdown, by the ending of the file. */
import { extname, resolve } from 'node:path';
import { filePath, fileUri } from '../analysis/file-location.ts';
import { fileKindOf } from '../model/schema.ts';
import type { PackDocument } from '../report/document.ts';
import { packHtml } from '../report/html-pack.ts';
import { packMarkdown } from '../report/markdown-pack.ts';
import { packFiles, packOf } from '../report/pack.ts';
import type { Call } from './call.ts';
import { loadWorkspace } from './load.ts';
import { revisionOf } from './pack-revision.ts';
import { findChromium, printPdf } from './print-pdf.ts';
import { CallProblem } from './problem.ts';
import { replaceFile } from './write-file.ts';

export async function report(call: Call): Promise<number> {
  const [site, ...more] = call.rest;
  const out = call.options['out'];
  if (site === undefined || more.length > 0) throw new CallProblem('report takes one site, a file *.dewsite.yaml');
  if (out === undefined) throw new CallProblem('report: say --out FILE.html, FILE.pdf or FILE.md');
  if (fileKindOf(site) !== 'site') throw new CallProblem(`${site}: not a file that is named *.dewsite.yaml`);
  const write = WRITERS[extname(out).toLowerCase()];
  if (write === undefined) throw new CallProblem(`--out ${out}: the name ends with .html, .pdf or .md`);
  write(await packOfSite(resolve(site)), out);
  return 0;
}

const WRITERS: Readonly<Record<string, (pack: PackDocument, out: string) => void>> = {
  '.html': (pack, out) => replaceFile(out, packHtml(pack)),
  '.md': (pack, out) => replaceFile(out, packMarkdown(pack)),
  '.pdf': writePdf,
};

/** Without a Chromium the pack is worth having as HTML, which any browser prints. */
function writePdf(pack: PackDocument, out: string): void {
  const chromium = findChromium();
  if (chromium !== undefined) {
    replaceFile(out, printPdf(chromium, packHtml(pack)));
    return;
  }
  const html = out.replace(/\.pdf$/i, '.html');
  replaceFile(html, packHtml(pack));
  process.stderr.write(
    `no Chromium was found to print the PDF, so ${html} was written instead: print it from a browser, or name a Chromium in the environment variable CHROMIUM\n`,
  );
}

async function packOfSite(path: string): Promise<PackDocument> {
  const analysis = loadWorkspace({ files: [path], whole: false }).analysis(fileUri(path));
  if (analysis === undefined) throw new CallProblem(`${path}: not a site`);
  const files = packFiles(analysis).map(([uri, text]) => [filePath(uri), text] as const);
  const pack = packOf({ analysis, revision: await revisionOf(files) });
  if (pack === undefined) throw new CallProblem(`${path}: not a site`);
  return pack;
}
