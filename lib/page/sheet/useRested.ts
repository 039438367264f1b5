import { useEffect, useState } from 'preact/hooks';

/**
 * A value once it has stayed for a moment: running across cells, or typing on, works nothing out.
 * @param parts what tells one value from the next, where the value is made afresh each time
 */
export function useRested<Value>(value: Value, ms: number, parts: readonly unknown[] = [value]): Value {
  const [rested, rest] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => rest(value), ms);
    return () => clearTimeout(timer);
  }, parts);
  return rested;
}
