/**
 * What a map holds under a key: made when it is first asked for, and kept.
 * @example kept(new Map<string, number>(), 'a', () => 1) // 1
 */
export function kept<Key, Value extends {}>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  const before = known.get(key);
  if (before !== undefined) return before;
  const made = make();
  known.set(key, made);
  return made;
}
