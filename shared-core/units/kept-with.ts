/**
 * What is worked out of an object once and kept as long as that object is: ask again with the same object, and the same
 * answer comes back, `undefined` and null included. The object must not change afterwards.
 */
export function keptWith<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    const known = kept.get(of);
    if (known) return known.value;
    const value = make(of);
    kept.set(of, { value });
    return value;
  };
}
