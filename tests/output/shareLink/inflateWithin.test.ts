import { strToU8, zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { inflateWithin } from '../../../src/output/shareLink/inflateWithin.ts';

const DICTIONARY = strToU8('a text that both sides know');
const TEXT = strToU8('a text that both sides know, and more of it');
const packed = (level: 0 | 9) => zlibSync(TEXT, { level, dictionary: DICTIONARY });

describe('a zlib stream', () => {
  test('gives back what went in, up to the limit', () => {
    for (const level of [0, 9] as const) {
      expect(inflateWithin(packed(level), DICTIONARY, TEXT.length)).toEqual(TEXT);
      expect(inflateWithin(packed(level), DICTIONARY, TEXT.length - 1)).toBeNull();
    }
  });

  test('is refused where it is cut off anywhere, goes on, or has another checksum', () => {
    for (const whole of [packed(0), packed(9)]) {
      for (let length = 0; length < whole.length; length++)
        expect([length, inflateWithin(whole.slice(0, length), DICTIONARY, 1000)]).toEqual([length, null]);
      expect(inflateWithin(Uint8Array.of(...whole, 0), DICTIONARY, 1000)).toBeNull();
      for (let i = 1; i <= 4; i++) {
        const altered = whole.map((byte, at) => (at === whole.length - i ? byte ^ 1 : byte));
        expect(inflateWithin(altered, DICTIONARY, 1000)).toBeNull();
      }
    }
  });
});
