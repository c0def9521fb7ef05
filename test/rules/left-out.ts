/** An example with one of its keys left out, for each key. */
import { isNode, isScalar, type Node, type Pair, parseDocument, visit } from 'yaml';

export interface LeftOut {
  /** The path of the key: `spaces.kiln-2.pressure`. */
  readonly key: string;
  /** The example without it, laid out anew. */
  readonly text: string;
}

/** Keys that an alias needs stay, and what YAML cannot read has none. */
export function withoutEachKey(text: string): readonly LeftOut[] {
  if (parseDocument(text).errors.length > 0) return [];
  const result: LeftOut[] = [];
  for (let index = 0; ; index++) {
    const document = parseDocument(text);
    let seen = 0;
    let key: string | undefined;
    let holdsAnchor = false;
    visit(document, {
      Pair(_, pair, path) {
        if (seen++ !== index) return undefined;
        key = [...path.filter((part): part is Pair => 'key' in part && 'value' in part), pair].map(nameOf).join('.');
        holdsAnchor = isNode(pair.value) && hasAnchor(pair.value);
        return visit.REMOVE;
      },
    });
    if (key === undefined) return result;
    if (!holdsAnchor) result.push({ key, text: String(document) });
  }
}

function nameOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : '?';
}

function hasAnchor(node: Node): boolean {
  let found = false;
  visit(node, {
    Value(_, { anchor }) {
      found = found || anchor !== undefined;
    },
  });
  return found;
}
