/** Reads the XML that the tests meet: elements, attributes and text, without comments, CDATA or namespaces. */

export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  text: string;
}

const TEXT = `(?:[^<>&"]|&(?:amp|lt|gt|quot);)*`;
const TOKEN = new RegExp(`<(/?)([a-z-]+)((?: [a-z]+="${TEXT}")*)(/?)>|(${TEXT})`, 'gyu');
const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';

/** The outermost element. Throws where the text is not well formed, or has a character that XML 1.0 (2.2) has not. */
export function readXml(text: string): XmlElement {
  if (!text.startsWith(HEAD)) throw new Error('no XML declaration');
  const control = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/u.exec(text);
  if (control !== null) throw new Error(`a character that XML has not, at ${control.index}`);
  const root: XmlElement = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  let end = HEAD.length;
  for (const token of text.slice(HEAD.length).matchAll(TOKEN)) {
    const [all, closing, name = '', attributes = '', empty, words = ''] = token;
    const parent = open.at(-1) ?? root;
    end += all.length;
    if (closing === '/' && open.pop()?.name !== name) throw new Error(`</${name}> closes what is not open`);
    if (closing === '') {
      const element = { name, attributes: attributesIn(attributes), children: [], text: '' };
      parent.children.push(element);
      if (empty === '') open.push(element);
    }
    parent.text += unescaped(words);
  }
  const [outermost, ...others] = root.children;
  if (end !== text.length || open.length !== 1 || outermost === undefined || others.length > 0) {
    throw new Error(`not well formed near ${text.slice(end, end + 40)}`);
  }
  return outermost;
}

function attributesIn(text: string): Readonly<Record<string, string>> {
  const found = text.matchAll(/ ([a-z]+)="([^"]*)"/g);
  return Object.fromEntries([...found].map(([, name = '', value = '']) => [name, unescaped(value)]));
}

const CHARACTERS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"' };

function unescaped(text: string): string {
  return text.replace(/&(\w+);/g, (_, name: string) => CHARACTERS[name] ?? '');
}
