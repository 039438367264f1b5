/**
 * Whether two inputs of a task are alike, so that its result is too: plain objects, arrays, typed arrays and plain values,
 * compared all the way down. Two `NaN` are alike.
 */
export function sameInput(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (ArrayBuffer.isView(a) || Array.isArray(a)) {
    const [one, two] = [a as ArrayLike<unknown>, b as ArrayLike<unknown>];
    if (a.constructor !== b.constructor || one.length !== two.length) return false;
    for (let i = 0; i < one.length; i++) if (!sameInput(one[i], two[i])) return false;
    return true;
  }
  const names = Object.keys(a);
  if (Array.isArray(b) || ArrayBuffer.isView(b) || names.length !== Object.keys(b).length) return false;
  return names.every(
    (name) =>
      Object.hasOwn(b, name) && sameInput((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]),
  );
}
