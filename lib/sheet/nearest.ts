/**
 * The name most like the one that was written, to suggest it, of equally near ones the first; `undefined` where none is
 * near (more than a third of the letters differ) or the names are longer than 64 letters.
 * @example nearest('toe_lenght_mm', ['toe_length_mm', 'date']) // 'toe_length_mm'
 */
export function nearest(written: string, names: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.min(written.length, 64) / 3;
  for (const name of names) {
    if (Math.abs(name.length - written.length) > least) continue;
    const distance = edits(written.toLowerCase(), name.toLowerCase());
    if (distance < least || (distance === least && best === undefined)) {
      best = name;
      least = distance;
    }
  }
  return best;
}

/** How many letters to change, add, drop or swap with their neighbour. */
function edits(a: string, b: string): number {
  if (a.length > 64 || b.length > 64) return Number.POSITIVE_INFINITY;
  let older: number[] = [];
  let old = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      row[j] = Math.min(old[j] + 1, row[j - 1] + 1, old[j - 1] + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) row[j] = Math.min(row[j], older[j - 2] + 1);
    }
    older = old;
    old = row;
  }
  return old[b.length];
}
