/** What a map says under one of its keys. */
import type { ScalarNode, SyntaxNode } from '../../syntax/nodes.ts';

/** Undefined for what is no map or has no such key, and where a map, a list or an alias stands there. */
export function scalarIn(node: SyntaxNode, key: string): ScalarNode | undefined {
  const value = node.kind === 'map' ? node.pairs.find((pair) => pair.key.text === key)?.value : undefined;
  return value?.kind === 'scalar' ? value : undefined;
}
