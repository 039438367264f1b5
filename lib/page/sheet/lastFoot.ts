const nameOf = (table: string) => `evenhoof last ${table}`;

/** Remembers for this tab which foot it shows, so that a reload comes back to it. */
export function keepLastFoot(table: string, key: string): void {
  try {
    sessionStorage.setItem(nameOf(table), key);
  } catch {
    // Where nothing is kept, a reload begins with the first foot.
  }
}

/** The foot that this tab showed last; `undefined` where that isn't known. */
export function lastFoot(table: string): string | undefined {
  try {
    return sessionStorage.getItem(nameOf(table)) ?? undefined;
  } catch {
    return undefined;
  }
}
