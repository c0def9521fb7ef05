/** Reads the HTML that we write, and refuses what is not well-formed: every element closed, in order. */
export interface HtmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: (HtmlElement | string)[];
}

const TOKEN = /<!doctype html>|<\/([\w-]+)>|<([\w-]+)((?: [\w:-]+="[^"<]*")*)>|([^<]+)/gy;
const VOID = new Set(['meta', 'br']);
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

export function readHtml(html: string): HtmlElement {
  const root: HtmlElement = { name: '', attributes: new Map(), children: [] };
  const open = [root];
  let end = 0;
  for (const [token, closed, opened, attributes = '', text] of html.matchAll(TOKEN)) {
    end += token.length;
    const parent = open.at(-1) ?? root;
    if (text !== undefined) parent.children.push(unescaped(text));
    if (closed !== undefined && open.pop()?.name !== closed) throw new Error(`</${closed}> closes nothing at ${end}`);
    if (opened === undefined) continue;
    const element: HtmlElement = { name: opened, attributes: readAttributes(attributes), children: [] };
    parent.children.push(element);
    if (!VOID.has(opened)) open.push(element);
  }
  if (end !== html.length || open.length !== 1) throw new Error(`not well-formed at ${html.slice(end, end + 80)}`);
  return root;
}

/** Every element and every text, with the elements around it, the innermost last. */
export function visit(
  root: HtmlElement,
  see: (node: HtmlElement | string, around: readonly HtmlElement[]) => void,
  around: readonly HtmlElement[] = [],
): void {
  for (const child of root.children) {
    see(child, [...around, root]);
    if (typeof child !== 'string') visit(child, see, [...around, root]);
  }
}

export function elementsOf(root: HtmlElement): readonly HtmlElement[] {
  const found: HtmlElement[] = [];
  visit(root, (node) => {
    if (typeof node !== 'string') found.push(node);
  });
  return found;
}

export function textOf(node: HtmlElement | string): string {
  return typeof node === 'string' ? node : node.children.map(textOf).join('');
}

function readAttributes(text: string): ReadonlyMap<string, string> {
  return new Map(
    [...text.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, unescaped(value)]),
  );
}

function unescaped(text: string): string {
  return text.replace(/&([^;]*);/g, (_, name: string) => {
    const character = ENTITIES[name];
    if (character === undefined) throw new Error(`&${name}; is no entity of ours`);
    return character;
  });
}
