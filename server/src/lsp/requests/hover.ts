/** Hovers in the terms of the protocol. */
import { type HistoryPicture, hoverAt } from '../../features/reading/hover.ts';
import { pictureUri } from '../../pictures/picture-file.ts';
import { SIZE as PLOT_SIZE } from '../../pictures/plots/history-plane.ts';
import { historyPlot } from '../../pictures/plots/history-plot.ts';
import { rangeIn } from '../protocol.ts';
import type { Served } from '../served.ts';

/** Not every editor shows images in hovers; that of our own extension does. The text beside it says the same. */
const historyPicture: HistoryPicture = (history, planned) =>
  `![](${pictureUri(historyPlot(history, planned), PLOT_SIZE)})`;

export function serveHovers({ connection, client, analysisOf }: Served): void {
  const pictureOf = client.isOurs ? historyPicture : undefined;
  connection.onHover(async ({ textDocument, position }) => {
    const analysis = await analysisOf(textDocument.uri);
    const hover = analysis && hoverAt(analysis, analysis.parsed.lines.offsetAt(position), pictureOf);
    if (analysis === undefined || hover === undefined) return null;
    return { contents: { kind: 'markdown', value: hover.markdown }, range: rangeIn(analysis.parsed, hover.range) };
  });
}
