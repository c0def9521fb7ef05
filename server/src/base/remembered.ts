/** What was computed, kept apart from what was not: a result may be undefined. */
interface Kept<Result> {
  readonly result: Result;
}

interface Memory<Key, Result> {
  get(key: Key): Kept<Result> | undefined;
  set(key: Key, kept: Kept<Result>): unknown;
}

function rememberedIn<Key, Result>(memory: Memory<Key, Result>, compute: (key: Key) => Result): (key: Key) => Result {
  return (key) => {
    const known = memory.get(key);
    if (known !== undefined) return known.result;
    const result = compute(key);
    memory.set(key, { result });
    return result;
  };
}

/** A function of an immutable object that computes its result once for as long as the object is in use. */
export function remembered<Key extends object, Result>(compute: (key: Key) => Result): (key: Key) => Result {
  return rememberedIn(new WeakMap(), compute);
}

/** The same for names of a closed set, such as the quantities: what is made of each is kept with the function. */
export function rememberedByName<Name extends string, Result>(make: (name: Name) => Result): (name: Name) => Result {
  return rememberedIn(new Map(), make);
}

/** The same for every member of an immutable object: each of the reports of a point, for example. */
export function rememberedOf<Key extends object, Member extends string, Result>(
  compute: (key: Key, member: Member) => Result,
): (key: Key, member: Member) => Result {
  const ofKey = remembered((key: Key) => rememberedByName((member: Member) => compute(key, member)));
  return (key, member) => ofKey(key)(member);
}

/** Something that is made when it is asked for first. */
export function madeOnce<Result>(make: () => Result): () => Result {
  let kept: Kept<Result> | undefined;
  return () => {
    kept ??= { result: make() };
    return kept.result;
  };
}
