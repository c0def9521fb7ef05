/** Inlay hints and code lenses in the terms of the protocol. */
import type { CodeLens, InlayHint } from 'vscode-languageserver';
import type { Analysis } from '../../analysis/analysis.ts';
import { codeLenses } from '../../features/reading/code-lenses.ts';
import { type HintSubject, hintTooltip, inlayHints } from '../../features/reading/inlay-hints.ts';
import { SHOW_PLACE } from '../client.ts';
import { rangeIn, stretchIn } from '../protocol.ts';
import type { Served } from '../served.ts';
import type { SettingsReader } from '../settings.ts';

/** Enough to find the numbers of a hint again. */
interface HintData {
  readonly uri: string;
  readonly about: HintSubject;
}

export function serveHints({ connection, client, analysisOf }: Served, settings: SettingsReader): void {
  connection.languages.inlayHint.on(async ({ textDocument: { uri }, range }): Promise<InlayHint[]> => {
    const [analysis, { hints }] = await Promise.all([analysisOf(uri), settings.of(uri)]);
    if (analysis === undefined) return [];
    const { parsed } = analysis;
    return inlayHints(analysis, stretchIn(parsed, range), hints).map(({ at, label, about }) => ({
      position: parsed.lines.positionAt(at),
      label,
      paddingLeft: true,
      data: { uri, about } satisfies HintData,
    }));
  });
  connection.languages.inlayHint.resolve(async (hint) => {
    const { uri, about } = hint.data as HintData;
    const analysis = await analysisOf(uri);
    const tooltip = analysis && hintTooltip(analysis, about);
    return tooltip === undefined ? hint : { ...hint, tooltip: { kind: 'markdown', value: tooltip } };
  });
  connection.onCodeLens(async ({ textDocument: { uri } }): Promise<CodeLens[]> => {
    const [analysis, { lenses }] = await Promise.all([analysisOf(uri), settings.of(uri)]);
    if (analysis === undefined) return [];
    const ofFile = codeLenses(analysis, lenses).map(({ above, title, opens }) => ({
      range: rangeIn(analysis.parsed, above),
      command: {
        title,
        command: client.showsPlaces ? SHOW_PLACE : '',
        arguments: [uri, rangeIn(analysis.parsed, opens)],
      },
    }));
    return client.isOurs && lenses.has('points') ? [...ofFile, ...viewLenses(analysis)] : ofFile;
  });
}

/** The command is one of the extension; a lens is pressed in the active editor. */
function viewLenses({ content, parsed }: Analysis): readonly CodeLens[] {
  if (content.kind !== 'site') return [];
  return [...content.site.points.values()].map(({ entry }) => {
    const range = rangeIn(parsed, parsed.rangeOf(entry.keyOrigin));
    const command = {
      title: 'Section and uncertainties',
      command: 'dewright.showPoint',
      arguments: [range.start],
    };
    return { range, command };
  });
}
