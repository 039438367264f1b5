import { describe, expect, it } from 'vitest';
import { decode } from '../../lib/files/decode.ts';

const text = ({ bytes, start }: ReturnType<typeof decode>) => new TextDecoder().decode(bytes.subarray(start));

describe('decode', () => {
  it('takes valid UTF-8 as it is, without a copy, and passes over a byte order mark', () => {
    const plain = new TextEncoder().encode('toe °, 馬\n');
    expect(decode(plain)).toMatchObject({ encoding: 'utf-8', start: 0 });
    expect(decode(plain).bytes).toBe(plain);
    const marked = new TextEncoder().encode('\ufeffa\n');
    expect(text(decode(marked))).toBe('a\n');
  });

  it('ends every text with a line end', () => {
    expect(text(decode('a'))).toBe('a\n');
    expect(text(decode('a\r'))).toBe('a\r');
    expect(text(decode(new Uint8Array(0)))).toBe('\n');
  });

  it('reads UTF-16 of either byte order, with a mark or told by its zero bytes', () => {
    const little = Buffer.from('horse,é\n', 'utf16le');
    const big = Buffer.from(little).swap16();
    for (const [bytes, encoding] of [
      [Buffer.concat([Buffer.of(0xff, 0xfe), little]), 'utf-16le'],
      [Buffer.concat([Buffer.of(0xfe, 0xff), big]), 'utf-16be'],
      [little, 'utf-16le'],
      [big, 'utf-16be'],
    ] as const) {
      const decoded = decode(bytes);
      expect(decoded.encoding).toBe(encoding);
      expect(text(decoded)).toBe('horse,é\n');
    }
  });

  it('falls back to windows-1252 where the bytes are no UTF-8, wherever the byte stands', () => {
    for (let place = 0; place < 9; place++) {
      const bytes = new Uint8Array(12).fill(0x61);
      bytes[place] = 0xb0;
      const decoded = decode(bytes.subarray(place % 3));
      if (place < place % 3) continue;
      expect(decoded.encoding).toBe('windows-1252');
      expect(text(decoded)).toContain('°');
    }
    expect(decode(Uint8Array.of(0x61, 0xc3)).encoding).toBe('windows-1252');
  });

  it('does not change the bytes it is given', () => {
    const bytes = Uint8Array.of(0x61, 0xb0, 0x2c);
    decode(bytes);
    expect([...bytes]).toEqual([0x61, 0xb0, 0x2c]);
  });
});
