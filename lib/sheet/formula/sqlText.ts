/** A double-precision number in SQL with all its digits: a plain `1` would divide as a whole number. */
export function numberLiteral(value: number): string {
  if (!Number.isFinite(value)) return 'NULL';
  const text = value.toExponential().replace('e+', 'e').toUpperCase();
  // Two minus signs side by side would start a comment.
  return value < 0 ? `(${text})` : text;
}

/** `expression OVER (…)`: for each group of rows with equal keys; without keys for all rows together. */
export function over(expression: string, keys: readonly string[], rest = ''): string {
  const partition = keys.length === 0 ? '' : `PARTITION BY ${keys.join(', ')}`;
  return `${expression} OVER (${[partition, rest].filter((part) => part !== '').join(' ')})`;
}
