/** What is wrong with a large table or the call, in words for the reader. */
export class LargeTableError extends Error {
  override readonly name = 'LargeTableError';
}
