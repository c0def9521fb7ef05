/** The legend of a chart: a row for each thing that it shows, in as many lines as its words need. */
import type { MarkupElement } from '../../base/markup.ts';
import { wrapped } from '../../base/words.ts';
import { CHARACTER_WIDTH, group, label } from '../svg.ts';
import { type ChartItem, SWATCH } from './item.ts';

const LEFT = 24;
const TEXT_LEFT = LEFT + 2 * SWATCH.across + 10;
const [LINE, BETWEEN_ROWS] = [15, 4];

export interface Legend {
  readonly content: MarkupElement;
  /** Where it ends. */
  readonly bottom: number;
}

/** @param top of the baseline of its first line @param width of the drawing */
export function legendOf(items: readonly ChartItem[], top: number, width: number): Legend {
  let y = top;
  const rows = items.map(({ swatch, text, place, isHere }) => {
    const lines = wrapped(text, (width - TEXT_LEFT) / CHARACTER_WIDTH);
    const goesTo = place === undefined ? {} : { 'data-file': place.file, 'data-start': place.start };
    const row = group({ ...goesTo, class: isHere === true ? 'here' : undefined }, [
      group({ transform: `translate(${LEFT + SWATCH.across} ${y - 4})` }, [swatch]),
      ...lines.map((line, index) => label([TEXT_LEFT, y + index * LINE], line)),
    ]);
    y += lines.length * LINE + BETWEEN_ROWS;
    return row;
  });
  return { content: group({ class: 'legend' }, rows), bottom: y };
}
