/** For each row the number of its code, missing for a code of -1. */
export function lookedUp(codes: Int32Array, numbers: Float64Array): Float64Array {
  const table = new Float64Array(numbers.length + 1);
  table[0] = Number.NaN;
  table.set(numbers, 1);
  const values = new Float64Array(codes.length);
  for (let row = 0; row < codes.length; row++) values[row] = table[codes[row] + 1];
  return values;
}

/** The rows whose code is marked. Mostly none is, and then no row is looked at. */
export function* rowsOf(codes: Int32Array, marked: readonly unknown[]): Iterable<number> {
  if (!marked.some(Boolean)) return;
  for (let row = 0; row < codes.length; row++) if (codes[row] >= 0 && marked[codes[row]]) yield row;
}
