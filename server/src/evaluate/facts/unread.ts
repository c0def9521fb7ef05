/** Keys that stand in a file with a value that cannot be read: what depends on them stays silent. */
import type { Located } from '../../model/located.ts';

/** @param read what was read of the key's value: undefined where the key is not there, or its value is unreadable */
export function isUnread(map: Located<unknown> | undefined, key: string, read: unknown): boolean {
  if (read !== undefined || map?.cursor.node.kind !== 'map') return false;
  return map.cursor.node.pairs.some((pair) => pair.key.text === key);
}
