/**
 * The controls of a view: what they are set to is told to the server, which shows the view anew; in a form that is
 * `data-live` with every key, elsewhere when the user is done. Buttons write what is set to the file, or take it back.
 */
import type { Inputs } from '../messages.ts';
import { keepState, keptState, tell } from './host.ts';

type Control = HTMLInputElement | HTMLSelectElement;

export function listenToControls(view: HTMLElement): void {
  view.addEventListener('change', ({ target }) => {
    if (isControl(target)) set(target);
  });
  view.addEventListener('input', ({ target }) => {
    if (isControl(target) && target.closest('form[data-live]') !== null) set(target);
  });
  view.addEventListener('click', ({ target }) => {
    const action = target instanceof HTMLElement ? target.dataset['action'] : undefined;
    if (action === 'write') tell({ type: 'write' });
    if (action === 'reset') tellInputs({});
  });
  view.addEventListener('submit', (event) => event.preventDefault());
}

function isControl(target: EventTarget | null): target is Control {
  return (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) && target.name !== '';
}

function set(control: Control): void {
  tellInputs({ ...keptState().inputs, [control.name]: control.value });
}

function tellInputs(inputs: Inputs): void {
  keepState({ inputs });
  tell({ type: 'inputs', inputs });
}
