/** The drawing of the view as an SVG that stands by itself: whole, with its style, without the places in files. */
import { PICTURE_STYLE } from '../../../../server/src/pictures/picture-style.ts';
import { wholeOf } from './drawing.ts';

export function copyOf(drawing: SVGSVGElement): string {
  const whole = wholeOf(drawing);
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  copy.setAttribute('viewBox', whole.join(' '));
  copy.setAttribute('width', String(whole[2]));
  copy.setAttribute('height', String(whole[3]));
  for (const part of [copy, ...copy.querySelectorAll('*')]) {
    for (const name of part.getAttributeNames()) {
      if (name.startsWith('data-') || name === 'tabindex') part.removeAttribute(name);
    }
    if (part.getAttribute('role') === 'link') part.setAttribute('role', 'img');
  }
  copy.querySelector('.spot')?.remove();
  const style = document.createElementNS('http://www.w3.org/2000/svg', 'style');
  style.textContent = PICTURE_STYLE;
  copy.prepend(style);
  return new XMLSerializer().serializeToString(copy);
}
