/** A file read part by part, put together again to the plain values that it holds. */
import { foreignAnchorsOf, rootCursor, TreeWalker } from '../../server/src/syntax/cursor.ts';
import type { SyntaxTree } from '../../server/src/syntax/nodes.ts';
import { type PlainValue, plainValueOf } from '../../server/src/syntax/plain-value.ts';

export function plainFile(tree: SyntaxTree): PlainValue {
  const walker = new TreeWalker(foreignAnchorsOf(tree));
  const file: Record<string, PlainValue> = {};
  const mapNamed = (name: string): Record<string, PlainValue> => {
    const known = file[name];
    const map = typeof known === 'object' && known !== null ? { ...known } : {};
    file[name] = map;
    return map as Record<string, PlainValue>;
  };
  for (const { part } of tree.parts) {
    const root = rootCursor(part);
    if (root === undefined) continue;
    const [mapName] = part.path.length === 2 ? part.path : [];
    const into = mapName === undefined ? file : mapNamed(mapName);
    for (const { key, value } of walker.pairs(root)) {
      const plain = plainValueOf(value, walker);
      if (plain === undefined) throw new Error(`too many values in ${part.path.join('.')}`);
      into[key.text] = plain;
    }
  }
  return file;
}
