import { say } from '../../words/say.ts';
import { PoolError } from './poolError.ts';

/** A key that pseudonyms and shifted dates come from; only its owner has it. */
export type PoolKey = CryptoKey;

/** As long as the result of SHA-256; a longer key adds nothing (RFC 2104, section 3). */
const BYTES = 32;

/** A new key at random, as its owner keeps it: 64 hexadecimal digits. */
export function newPoolKey(): string {
  return hex(crypto.getRandomValues(new Uint8Array(BYTES)));
}

/**
 * A key out of what its owner kept.
 * @param text  64 hexadecimal digits; blanks and line ends around them don't count
 * @throws PoolError where it is something else, or the browser has no cryptography for this page
 * @example await openPoolKey(newPoolKey())
 */
export async function openPoolKey(text: string): Promise<PoolKey> {
  const digits = text.trim();
  if (!/^[0-9a-f]{64}$/i.test(digits))
    throw new PoolError(
      say`This is no key for pooling: it was to be 64 digits from 0 to 9 and a to f, as they were made. Take the file that was saved with the first export, or have a new key made`,
    );
  // Browsers leave it out on pages that came over a network without encryption.
  if (crypto.subtle === undefined)
    throw new PoolError(
      say`This browser has no cryptography for a page that came without encryption. Open the notebook by https, or from this device`,
    );
  const bytes = Uint8Array.from({ length: BYTES }, (_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16));
  return crypto.subtle.importKey('raw', bytes, { name: 'HMAC', hash: 'SHA-256' }, false, ['sign']);
}

const hex = (bytes: Uint8Array) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
