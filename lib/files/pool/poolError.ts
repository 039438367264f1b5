/** Why tables can't be prepared for a pool, in words. */
export class PoolError extends Error {
  override readonly name = 'PoolError';
}
