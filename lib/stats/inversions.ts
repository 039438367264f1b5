/**
 * How many pairs of numbers stand in the wrong order, the larger before the smaller, counted while they are merged.
 * @param values numbers, none missing; they come back sorted
 * @param spare room for as many numbers
 * @source Knight 1966, Journal of the American Statistical Association 61:436–439
 * @example inversions(Float64Array.of(3, 1, 2)) // 2
 */
export function inversions(values: Float64Array, spare = new Float64Array(values.length)): number {
  const n = values.length;
  let count = 0;
  let [from, to]: Float64Array[] = [values, spare];
  for (let width = 1; width < n; width *= 2) {
    for (let left = 0; left < n; left += 2 * width) {
      const middle = Math.min(left + width, n);
      const right = Math.min(left + 2 * width, n);
      let [i, j] = [left, middle];
      for (let k = left; k < right; k++) {
        if (i < middle && (j >= right || from[i] <= from[j])) to[k] = from[i++];
        else {
          to[k] = from[j++];
          count += middle - i;
        }
      }
    }
    [from, to] = [to, from];
  }
  if (from !== values) values.set(from);
  return count;
}
