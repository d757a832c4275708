import fc from 'fast-check';
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { png } from '../../src/output/png.ts';
import { checkLaw } from '../laws.ts';

const picture = fc
  .record({
    width: fc.integer({ min: 1, max: 40 }),
    height: fc.integer({ min: 1, max: 40 }),
    channels: fc.constantFrom(1 as const, 3 as const),
  })
  .chain((size) => {
    const length = size.width * size.height * size.channels;
    return fc.uint8Array({ minLength: length, maxLength: length }).map((bytes) => ({ ...size, bytes }));
  });

test('an independent reader finds every pixel of a picture, grey or in colour', () => {
  checkLaw(
    fc.property(picture, ({ width, height, channels, bytes }) => {
      const read = PNG.sync.read(Buffer.from(png({ width, height, channels, bytes })));
      expect([read.width, read.height]).toEqual([width, height]);
      const wanted = Array.from({ length: width * height }, (_, i) => {
        const [r, g, b] = channels === 1 ? [bytes[i], bytes[i], bytes[i]] : bytes.subarray(3 * i, 3 * i + 3);
        return [r, g, b, 255];
      }).flat();
      expect([...read.data]).toEqual(wanted);
    }),
  );
});
