/** Puts a new body into the page and keeps what the user was at: the focus, and a text half written. */

export function showBody(view: HTMLElement, body: string): void {
  const focused = view.contains(document.activeElement) ? document.activeElement : null;
  const key = focused === null ? undefined : keyOf(focused);
  const written = isText(focused) ? focused : undefined;
  view.innerHTML = body;
  if (key === undefined) return;
  const again = [...view.querySelectorAll<HTMLElement | SVGElement>(FOCUSABLE)].find((each) => keyOf(each) === key);
  if (isText(again) && written !== undefined) {
    again.value = written.value;
    again.setSelectionRange(written.selectionStart, written.selectionEnd);
  }
  again?.focus({ preventScroll: true });
}

function isText(element: Element | null | undefined): element is HTMLInputElement {
  return element instanceof HTMLInputElement && ['text', 'search'].includes(element.type);
}

const FOCUSABLE = '[tabindex], input, select, button';

/** What makes an element the same as one in the body before: its names, and the words of a button. */
function keyOf(element: Element): string {
  const names = ['id', 'name', 'data-action', 'data-file', 'data-start', 'aria-label'];
  const words = element instanceof HTMLButtonElement ? element.textContent : '';
  return [...names.map((name) => element.getAttribute(name)), words].join('\n');
}
