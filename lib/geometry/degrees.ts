/** One degree in radians. */
export const degree = Math.PI / 180;

/**
 * An angle in degrees brought into [0, 180), for lines that have no head or tail.
 * @example halfTurn(-30) // 150
 */
export function halfTurn(angle: number): number {
  return ((angle % 180) + 180) % 180;
}
