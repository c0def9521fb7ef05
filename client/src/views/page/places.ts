/** A click or Enter on something that stands in a file goes there. */
import { tell } from './host.ts';

export function listenToPlaces(view: HTMLElement): void {
  view.addEventListener('mousedown', (event) => {
    // Else the view would be focused first, of which the editor hears so late that it turns back to it from the file.
    if (placeOf(event.target) !== undefined) event.preventDefault();
  });
  view.addEventListener('click', ({ target }) => goToPlaceOf(target));
  view.addEventListener('keydown', ({ key, target }) => {
    if (key === 'Enter') goToPlaceOf(target);
  });
}

function goToPlaceOf(target: EventTarget | null): void {
  const place = placeOf(target);
  if (place !== undefined) tell({ type: 'go-to', ...place });
}

function placeOf(target: EventTarget | null): { readonly file: string; readonly start: number } | undefined {
  if (!(target instanceof Element)) return undefined;
  const { file, start } = target.closest<PlacedElement>('[data-file]')?.dataset ?? {};
  return file === undefined || start === undefined ? undefined : { file, start: Number(start) };
}

type PlacedElement = HTMLElement | SVGElement;
