/** A function of an immutable object that computes its result once for as long as the object is in use. */
export function remembered<Key extends object, Result>(compute: (key: Key) => Result): (key: Key) => Result {
  const results = new WeakMap<Key, { readonly result: Result }>();
  return (key) => {
    const known = results.get(key);
    if (known !== undefined) return known.result;
    const result = compute(key);
    results.set(key, { result });
    return result;
  };
}
