/** A drawing that stands alone, as an image in a text: with its style, on paper of its own, without places in files. */
import { element, type MarkupElement, writeMarkup } from '../base/markup.ts';
import { PICTURE_STYLE } from './picture-style.ts';
import { rectangle, withoutPlaces } from './svg.ts';

/** An image cannot see the theme of the text around it. */
const PAPER = 'fill: var(--paper)';

/** @returns a data URI that may stand between the parentheses of a Markdown image */
export function pictureUri(
  drawn: MarkupElement,
  { width, height }: { readonly width: number; readonly height: number },
): string {
  const bare = withoutPlaces(drawn);
  const paper = rectangle([0, 0], [width, height], { style: PAPER });
  const style = element('style', {}, [PICTURE_STYLE]);
  const alone = element('svg', { ...bare.attributes, width, height }, [style, paper, ...bare.children]);
  return `data:image/svg+xml,${encodeURIComponent(writeMarkup(alone)).replace(/[()']/g, hexadecimal)}`;
}

function hexadecimal(character: string): string {
  return `%${character.charCodeAt(0).toString(16)}`;
}
