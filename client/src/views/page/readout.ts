/**
 * The line at the foot of a view. It says what the pointer or the focus is on, and in a drawing that `data-reads` what
 * state stands there: the server is asked, for one spot at a time. The arrow keys move the spot where no pointer does.
 */
import { spotOf, userUnit } from './drawing.ts';
import { tell } from './host.ts';

type Spot = readonly [x: number, y: number];

const ARROWS: Readonly<Record<string, Spot>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Pixels that an arrow key moves the spot; with Shift, one. */
const STEP = 10;

export interface Readout {
  /** The answer of the server. */
  show(reading: string): void;
}

export function listenToReadings(view: HTMLElement, output: HTMLElement): Readout {
  let about = '';
  let reading = '';
  let isAsking = false;
  let next: Spot | undefined;
  let spot: Spot | undefined;
  let isWanted = false;

  const write = (): void => {
    output.textContent = [about, reading].filter((text) => text !== '').join('\n');
  };
  const ask = (): void => {
    if (isAsking || next === undefined) return;
    isAsking = true;
    tell({ type: 'read', spot: next });
    next = undefined;
  };
  const readAt = (drawing: SVGSVGElement, at: Spot): void => {
    spot = at;
    next = at;
    isWanted = true;
    drawing.querySelector('.spot')?.setAttribute('transform', `translate(${at[0]} ${at[1]})`);
    ask();
  };
  const tellAbout = (target: EventTarget | null): void => {
    const labelled = target instanceof Element ? target.closest('[aria-label][tabindex]:not(svg)') : null;
    about = labelled?.getAttribute('aria-label') ?? '';
    write();
  };

  view.addEventListener('pointermove', (event) => {
    tellAbout(event.target);
    const drawing = readingDrawing(event.target);
    if (drawing !== null) readAt(drawing, spotOf(drawing, event));
  });
  view.addEventListener('pointerleave', () => {
    [about, reading, next, isWanted] = ['', '', undefined, false];
    write();
  });
  view.addEventListener('focusin', ({ target }) => tellAbout(target));
  view.addEventListener('keydown', (event) => {
    const direction = ARROWS[event.key];
    if (direction === undefined || !(event.target instanceof SVGSVGElement)) return;
    const drawing = readingDrawing(event.target);
    if (drawing === null) return;
    event.preventDefault();
    const step = (event.shiftKey ? 1 : STEP) * userUnit(drawing);
    const { x, y, width, height } = drawing.viewBox.baseVal;
    const from = spot ?? [x + width / 2, y + height / 2];
    readAt(drawing, [from[0] + direction[0] * step, from[1] + direction[1] * step]);
  });
  return {
    show(text) {
      isAsking = false;
      reading = isWanted ? text : '';
      write();
      ask();
    },
  };
}

function readingDrawing(target: EventTarget | null): SVGSVGElement | null {
  return target instanceof Element ? target.closest<SVGSVGElement>('svg[data-reads]') : null;
}
