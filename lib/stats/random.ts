import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random numbers that is the same for the same seed, on every machine. */
export interface Random {
  /** A number from 0 up to but not including 1, to 53 bits. */
  uniform(): number;
  /** A whole number from 0 to n − 1, for n up to 2³²; the shares differ by less than n / 2³². */
  below(n: number): number;
  /** A number from the standard normal distribution. */
  normal(): number;
}

/**
 * Random numbers from a seed, by xoroshiro128+.
 * @param seed any whole number; neighbouring seeds give unrelated streams
 * @source Blackman & Vigna 2021, ACM Transactions on Mathematical Software 47:36; the normal by Marsaglia & Bray 1964,
 *   SIAM Review 6:260–264
 * @example random(1).below(6) === random(1).below(6) // true
 */
export function random(seed: number): Random {
  const generator = xoroshiro128plus(scramble(seed));
  // The first outputs still show the seed.
  for (let i = 0; i < 32; i++) generator.next();
  const word = () => generator.next() >>> 0;
  const uniform = () => ((word() >>> 5) * 2 ** 26 + (word() >>> 6)) / 2 ** 53;
  let spare = NaN;
  return {
    uniform,
    below: (n) => Math.floor(word() * (n / 2 ** 32)),
    normal() {
      if (!Number.isNaN(spare)) {
        const kept = spare;
        spare = NaN;
        return kept;
      }
      for (;;) {
        const u = 2 * uniform() - 1;
        const v = 2 * uniform() - 1;
        const s = u * u + v * v;
        if (s >= 1 || s === 0) continue;
        const stretch = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * stretch;
        return u * stretch;
      }
    },
  };
}

/** Spreads neighbouring seeds over all 32 bits (the finaliser of MurmurHash3, Appleby, public domain). */
function scramble(seed: number): number {
  let h = (seed ^ (seed / 2 ** 32)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
