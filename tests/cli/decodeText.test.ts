import { isUtf8 } from 'node:buffer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../src/cli/decodeText.ts';
import { checkLaw } from '../laws.ts';
import { utf16 } from './commandLine.ts';

const text = fc.string({ unit: 'binary', maxLength: 40 }).filter((drawn) => !/[\0\uFEFF]/.test(drawn));

describe('bytes read as text', () => {
  test('give the text that they were written from, in each encoding', () => {
    checkLaw(
      fc.property(text, (written) => {
        const forms = [
          Buffer.from(written),
          Buffer.from(`\uFEFF${written}`),
          utf16(written, 'little'),
          utf16(written, 'big'),
        ];
        for (const bytes of forms) expect(decodeText(bytes)).toEqual({ ok: true, text: written });
      }),
    );
  });

  test('are refused at the first byte that is no UTF-8: all before it are, and none with it can be', () => {
    const damaged = fc.tuple(text, fc.uint8Array({ minLength: 1, maxLength: 4 }), text).map(([before, bytes, after]) =>
      // Not a mark of UTF-16.
      Buffer.concat([Buffer.from(`x${before}`), bytes, Buffer.from(after)]),
    );
    let refused = 0;
    checkLaw(
      fc.property(damaged, (bytes) => {
        const decoded = decodeText(bytes);
        expect(decoded.ok).toBe(isUtf8(bytes) && !bytes.includes(0));
        if (decoded.ok || decoded.got.startsWith('U+0000')) return;
        refused++;
        const at = Number(/ at byte (\d+),/.exec(decoded.got)?.[1]) - 1;
        expect(isUtf8(bytes.subarray(0, at))).toBe(true);
        for (let length = 1; length <= 4; length++) {
          const next = bytes.subarray(at, at + length);
          expect(next.length === length && isUtf8(next)).toBe(false);
        }
      }),
    );
    expect(refused).toBeGreaterThan(100);
  });
});
