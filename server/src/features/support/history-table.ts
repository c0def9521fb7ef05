/** How a point has held against its references, as Markdown: what was read on the visits, and what follows from it. */
import type { History } from '../../evaluate/history/history.ts';
import type { ReadingError } from '../../evaluate/history/reading-error.ts';
import { historySentences, readingWords } from '../../evaluate/history/words.ts';
import { formatNumber, showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import { escapeMarkdown, sectionsTogether } from './markdown.ts';

/** More readings than this are told by their number. */
const MOST_ROWS = 8;

/** @param picture a Markdown image of the history; empty where the reader's editor shows none */
export function historySection(history: History, picture: string): string {
  const { quantity, errors } = history;
  const earlier = errors.length - MOST_ROWS;
  const lines = [...(earlier > 0 ? [`${earlier} earlier readings are not listed`] : []), ...historySentences(history)];
  return sectionsTogether([
    `**${quantityInfo(quantity).title}** against its references`,
    picture,
    [HEADING, ...errors.slice(-MOST_ROWS).map(row)].join('\n'),
    lines.map((line) => `- ${escapeMarkdown(line)}.`).join('\n'),
  ]);
}

const HEADING = '| visit | shown | reference | error | En |\n| --- | ---: | ---: | ---: | ---: |';

function row(of: ReadingError): string {
  const { reading, error, enNumber } = of;
  const { shown, reference, referenceUncertainty } = reading;
  const { dimension, difference } = quantityInfo(reading.quantity);
  const uncertain = referenceUncertainty === undefined ? '' : ` ± ${showQuantity(referenceUncertainty, difference)}`;
  const cells = [
    readingWords(of),
    showQuantity(shown, dimension),
    `${showQuantity(reference, dimension)}${uncertain}`,
    showQuantity(error, difference),
    enNumber === undefined ? '' : formatNumber(enNumber, 2),
  ];
  return `| ${cells.map(escapeMarkdown).join(' | ')} |`;
}
