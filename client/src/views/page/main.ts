/** The script of every view's page. */
import { PICTURE_STYLE } from '../../../../server/src/pictures/picture-style.ts';
import { listenToControls } from './controls.ts';
import { copyOf } from './copy-picture.ts';
import { keepState, keptState, onMessage, tell } from './host.ts';
import { PAGE_STYLE } from './page-style.ts';
import { listenToPlaces } from './places.ts';
import { listenToReadings } from './readout.ts';
import { showBody } from './show.ts';
import { listenToTables } from './tables.ts';
import { listenToZoom } from './zoom.ts';

const style = new CSSStyleSheet();
style.replaceSync(PICTURE_STYLE + PAGE_STYLE);
document.adoptedStyleSheets = [style];

const view = part('main');
const toolbar = part('header');
listenToPlaces(view);
listenToControls(view);
const tables = listenToTables(view);
const zoom = listenToZoom(view);
const footer = part('footer');
const readout = listenToReadings(view, part('output'));

toolbar.addEventListener('click', ({ target }) => {
  const action = target instanceof HTMLElement ? target.dataset['action'] : undefined;
  if (action === 'zoom-in' || action === 'zoom-out' || action === 'zoom-reset') zoom.by(action);
  const drawing = view.querySelector<SVGSVGElement>('svg.drawing');
  if (action === 'copy' && drawing !== null) tell({ type: 'copy', svg: copyOf(drawing) });
});

onMessage((message) => {
  if (message.type === 'reading') return readout.show(message.text);
  keepState({ uri: message.uri });
  showBody(view, message.body);
  const hasDrawing = view.querySelector('svg.drawing') !== null;
  toolbar.hidden = !hasDrawing;
  footer.hidden = !hasDrawing;
  zoom.restore();
  tables.restore();
});

tell({ type: 'ready', inputs: keptState().inputs });

function part(name: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(name);
  if (found === null) throw new Error(`The page has no ${name}.`);
  return found;
}
