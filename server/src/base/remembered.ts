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

/** The same for every member of an immutable object: each of the reports of a point, for example. */
export function rememberedOf<Key extends object, Member extends string, Result>(
  compute: (key: Key, member: Member) => Result,
): (key: Key, member: Member) => Result {
  const membersOf = remembered((_: Key) => new Map<Member, { readonly result: Result }>());
  return (key, member) => {
    const members = membersOf(key);
    const known = members.get(member);
    if (known !== undefined) return known.result;
    const result = compute(key, member);
    members.set(member, { result });
    return result;
  };
}

/** The same for names of a closed set, such as the quantities: what is made of each is kept for good. */
export function rememberedByName<Name extends string, Result>(make: (name: Name) => Result): (name: Name) => Result {
  const made = new Map<Name, { readonly result: Result }>();
  return (name) => {
    const known = made.get(name);
    if (known !== undefined) return known.result;
    const result = make(name);
    made.set(name, { result });
    return result;
  };
}
