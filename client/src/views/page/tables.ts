/**
 * Tables that sort by the column whose heading is pressed (`table[data-sorts]`, a cell may give its `data-value`), and
 * fields that leave only the rows with their words (`input[data-filters]`, naming the table by its id).
 */
interface Order {
  readonly column: number;
  readonly isDescending: boolean;
}

export interface Tables {
  /** Sorts and filters tables that have been made anew as they were. */
  restore(): void;
}

export function listenToTables(view: HTMLElement): Tables {
  const orders = new Map<string, Order>();
  const words = new Map<string, string>();

  view.addEventListener('click', ({ target }) => {
    const heading =
      target instanceof Element
        ? target.closest<HTMLTableCellElement>('table[data-sorts] th button')?.closest('th')
        : null;
    const table = heading?.closest('table');
    if (heading == null || table == null) return;
    const before = orders.get(table.id);
    const isDescending = before?.column === heading.cellIndex && !before.isDescending;
    orders.set(table.id, { column: heading.cellIndex, isDescending });
    restore();
  });
  view.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.dataset['filters'] === undefined) return;
    words.set(target.dataset['filters'], target.value);
    restore();
  });
  const restore = (): void => {
    for (const [id, order] of orders) sort(view.querySelector<HTMLTableElement>(`#${CSS.escape(id)}`), order);
    for (const [id, text] of words) {
      const field = view.querySelector<HTMLInputElement>(`input[data-filters="${CSS.escape(id)}"]`);
      if (field !== null) field.value = text;
      filter(view.querySelector<HTMLTableElement>(`#${CSS.escape(id)}`), text);
    }
  };
  return { restore };
}

function sort(table: HTMLTableElement | null, { column, isDescending }: Order): void {
  const body = table?.tBodies[0];
  if (table === null || body === undefined) return;
  const direction = isDescending ? -1 : 1;
  body.append(...[...body.rows].sort((one, other) => direction * compare(one.cells[column], other.cells[column])));
  for (const heading of table.querySelectorAll('th')) heading.removeAttribute('aria-sort');
  const heading = table.tHead?.rows[0]?.cells[column];
  heading?.setAttribute('aria-sort', isDescending ? 'descending' : 'ascending');
}

function compare(one: HTMLTableCellElement | undefined, other: HTMLTableCellElement | undefined): number {
  const [value, otherValue] = [one?.dataset['value'], other?.dataset['value']];
  if (value !== undefined && otherValue !== undefined) return Number(value) - Number(otherValue);
  return (one?.textContent ?? '').localeCompare(other?.textContent ?? '', undefined, { numeric: true });
}

function filter(table: HTMLTableElement | null, text: string): void {
  const wanted = text.toLowerCase().split(/\s+/);
  for (const row of table?.tBodies[0]?.rows ?? []) {
    const shown = row.textContent?.toLowerCase() ?? '';
    row.hidden = !wanted.every((word) => shown.includes(word));
  }
}
