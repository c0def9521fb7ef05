/** Fields of an object that are computed when somebody reads them. */

/**
 * @param object gets the fields itself, so that what is remembered of it stays remembered
 * @param fields each is computed anew at every reading: what should be kept is remembered by its computation
 */
export function withLazyFields<Target extends object, Fields extends object>(
  object: Target,
  fields: { readonly [Name in keyof Fields]: () => Fields[Name] },
): Target & Fields {
  const getters = Object.entries<() => unknown>(fields).map(
    ([name, get]) => [name, { get, enumerable: true }] as const,
  );
  return Object.defineProperties(object, Object.fromEntries(getters)) as Target & Fields;
}
