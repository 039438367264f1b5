/** `1 foot`, `3 feet`: a number with its word, of which there are two forms, one and several. */
export function counted(count: number, one: string, several: string): string {
  return `${count} ${count === 1 ? one : several}`;
}
