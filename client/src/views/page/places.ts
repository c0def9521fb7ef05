/** A click or Enter on something that stands in a file goes there. */
import { tell } from './host.ts';

export function listenToPlaces(view: HTMLElement): void {
  view.addEventListener('click', ({ target }) => goToPlaceOf(target));
  view.addEventListener('keydown', ({ key, target }) => {
    if (key === 'Enter') goToPlaceOf(target);
  });
}

function goToPlaceOf(target: EventTarget | null): void {
  const { file, start } =
    target instanceof Element ? (target.closest<PlacedElement>('[data-file]')?.dataset ?? {}) : {};
  if (file !== undefined && start !== undefined) tell({ type: 'go-to', file, start: Number(start) });
}

type PlacedElement = HTMLElement | SVGElement;
