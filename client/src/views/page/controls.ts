/** The controls of a view: what they are set to is told to the server, which shows the view anew. */
import { keepState, keptState, tell } from './host.ts';

export function listenToControls(view: HTMLElement): void {
  view.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement) || target.name === '') return;
    const isSwitch = target instanceof HTMLInputElement && target.type === 'checkbox';
    const inputs = { ...keptState().inputs, [target.name]: isSwitch ? String(target.checked) : target.value };
    keepState({ inputs });
    tell({ type: 'inputs', inputs });
  });
  view.addEventListener('submit', (event) => event.preventDefault());
}
