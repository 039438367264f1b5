/**
 * Moves the nth smallest number to place n, smaller or equal ones before it and larger or equal ones behind it,
 * in time that grows with the length alone.
 * @param values numbers, none of them missing, rearranged in place
 * @param n which, from 0 for the smallest to length − 1
 * @returns the nth smallest
 * @source Hoare 1961, Communications of the ACM 4:321, with the middle of three as the pivot
 * @example selectNth(Float64Array.of(5, 1, 4), 1) // 4
 */
export function selectNth(values: Float64Array, n: number): number {
  let left = 0;
  let right = values.length - 1;
  while (right > left) {
    const pivot = middle(values[left], values[(left + right) >> 1], values[right]);
    let i = left - 1;
    let j = right + 1;
    for (;;) {
      do i++;
      while (values[i] < pivot);
      do j--;
      while (values[j] > pivot);
      if (i >= j) break;
      const swapped = values[i];
      values[i] = values[j];
      values[j] = swapped;
    }
    if (n <= j) right = j;
    else left = j + 1;
  }
  return values[n];
}

function middle(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
