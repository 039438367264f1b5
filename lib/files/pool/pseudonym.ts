import type { PoolKey } from './poolKey.ts';

/** Twelve hexadecimal digits: among 10,000 names two are alike once in six million keys, and that is looked for. */
const BYTES = 6;

/** As far as a date is moved, either way: half a year, so that any season may become any other. */
const MOST_DAYS = 182;

/**
 * A name's stand-in: the same for the same key, column and name, and without the key no way leads back.
 * @param column  in which the name stands; the same name gets another stand-in in another column
 * @returns `horse-3f9a2c71b0d4`: the column without `_id`, and twelve digits of the name's HMAC-SHA-256
 * @source RFC 2104 (HMAC), FIPS 180-4 (SHA-256); RFC 4231 for the tests
 */
export async function pseudonym(key: PoolKey, column: string, name: string): Promise<string> {
  const digits = Array.from(await mac(key, ['name', column, name]), (byte) => byte.toString(16).padStart(2, '0'));
  return `${column.replace(/_id$/, '')}-${digits.slice(0, BYTES).join('')}`;
}

/**
 * By how many days all dates of a horse are moved: the same for the same key and horse, and never 0.
 * @returns a whole number from -182 to 182, each as likely as any other
 */
export async function daysMoved(key: PoolKey, horse: string): Promise<number> {
  const bytes = await mac(key, ['days', horse]);
  // Of 2⁴⁸ numbers; what 364 leaves over at the end makes none of them more likely by more than one in 10¹¹.
  const number = bytes.slice(0, BYTES).reduce((sum, byte) => sum * 256 + byte, 0);
  const place = number % (2 * MOST_DAYS);
  return place < MOST_DAYS ? place - MOST_DAYS : place - MOST_DAYS + 1;
}

/** Written as JSON, no two lists of words are the same text. */
async function mac(key: PoolKey, words: readonly string[]): Promise<Uint8Array> {
  const text = new TextEncoder().encode(JSON.stringify(words));
  return new Uint8Array(await crypto.subtle.sign('HMAC', key, text));
}
