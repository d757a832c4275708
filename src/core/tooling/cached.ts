/**
 * What is known under a key, made where it is not. The one made first goes where more than `most` are kept, so that a long
 * session does not fill the memory.
 */
export function cached<Key, Value>(known: Map<Key, Value>, key: Key, most: number, make: () => Value): Value {
  const before = known.get(key);
  if (before !== undefined) return before;
  if (known.size >= most) known.delete(known.keys().next().value!);
  const made = make();
  known.set(key, made);
  return made;
}
