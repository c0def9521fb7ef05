/** Zooms and moves the drawing that is marked for it: by wheel, by drag, by buttons and by the keys + − 0. */
import { spotOf, wholeOf } from './drawing.ts';

const STEP = 1.25;
const MOST = 16;

export interface Zoom {
  by(action: 'zoom-in' | 'zoom-out' | 'zoom-reset'): void;
  /** Shows the same part of a drawing that has been made anew; all of one that is about something else. */
  restore(): void;
}

/** The part that is seen, as shares of the whole. */
interface Part {
  readonly left: number;
  readonly top: number;
  readonly size: number;
}

/** How far the pointer may move, in pixels, for a click to be one. */
const CLICK_SLACK = 4;
const WHOLE: Part = { left: 0, top: 0, size: 1 };

export function listenToZoom(view: HTMLElement): Zoom {
  let part = WHOLE;
  let name: string | null = null;
  let dragged = 0;

  const current = (): SVGSVGElement | null => view.querySelector<SVGSVGElement>('svg[data-zooms]');
  const show = (next: Part): void => {
    const drawing = current();
    if (drawing === null) return;
    const within = (low: number): number => Math.min(Math.max(0, low), 1 - next.size);
    part = { left: within(next.left), top: within(next.top), size: next.size };
    const [x, y, width, height] = wholeOf(drawing);
    const box = [x + part.left * width, y + part.top * height, part.size * width, part.size * height];
    drawing.setAttribute('viewBox', box.join(' '));
  };
  /** Keeps the spot under the pointer, given as shares of the whole, where it is. */
  const zoom = (factor: number, across: number, down: number): void => {
    const size = Math.min(1, Math.max(1 / MOST, part.size / factor));
    const kept = size / part.size;
    show({ left: across - (across - part.left) * kept, top: down - (down - part.top) * kept, size });
  };
  const zoomAtMiddle = (factor: number): void => zoom(factor, part.left + part.size / 2, part.top + part.size / 2);
  const by: Zoom['by'] = (action) => {
    if (action === 'zoom-reset') show(WHOLE);
    else zoomAtMiddle(action === 'zoom-in' ? STEP : 1 / STEP);
  };

  view.addEventListener(
    'wheel',
    (event) => {
      const drawing = drawingOf(event.target);
      const isOut = event.deltaY > 0;
      if (drawing === null || (isOut && part.size === 1)) return; // the whole is seen: the wheel moves the page
      event.preventDefault();
      const [x, y, width, height] = wholeOf(drawing);
      const [atX, atY] = spotOf(drawing, event);
      zoom(isOut ? 1 / STEP : STEP, (atX - x) / width, (atY - y) / height);
    },
    { passive: false },
  );
  view.addEventListener('pointerdown', () => {
    dragged = 0;
  });
  view.addEventListener('pointermove', (event) => {
    const drawing = drawingOf(event.target);
    if (drawing === null || event.buttons !== 1 || part.size === 1) return;
    dragged += Math.hypot(event.movementX, event.movementY);
    const { width, height } = drawing.getBoundingClientRect();
    const left = part.left - (event.movementX / width) * part.size;
    show({ left, top: part.top - (event.movementY / height) * part.size, size: part.size });
  });
  view.addEventListener(
    'click',
    (event) => {
      if (dragged <= CLICK_SLACK) return;
      event.stopPropagation(); // the end of a drag goes nowhere
      current()?.focus({ preventScroll: true }); // and the keys stay with the drawing
    },
    { capture: true },
  );
  view.addEventListener('keydown', ({ key, target }) => {
    if (drawingOf(target) === null) return;
    if (key === '+' || key === '=') by('zoom-in');
    if (key === '-') by('zoom-out');
    if (key === '0') by('zoom-reset');
  });
  const restore = (): void => {
    const known = name;
    name = current()?.getAttribute('aria-label') ?? null;
    show(name === known ? part : WHOLE);
  };
  return { by, restore };
}

function drawingOf(target: EventTarget | null): SVGSVGElement | null {
  return target instanceof Element ? target.closest<SVGSVGElement>('svg[data-zooms]') : null;
}
