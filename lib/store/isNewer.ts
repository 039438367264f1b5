/** Whether a newer program has written the records, which this one can't read and doesn't touch. */
export function isNewer(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'VersionError';
}
