import fc from 'fast-check';
import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import type { PictureDecoder } from '../../../src/artwork/picture/decodePicture.ts';
import { type Grey, greyOf, greySize } from '../../../src/artwork/picture/grey.ts';
import { packedPixels } from '../../../src/artwork/picture/packedPixels.ts';
import { pictureHeader } from '../../../src/artwork/picture/pictureHeader.ts';
import { softened } from '../../../src/artwork/picture/softened.ts';
import { otsuThreshold } from '../../../src/artwork/picture/threshold.ts';
import { tracedOutlines } from '../../../src/artwork/picture/tracedOutlines.ts';
import { TRACE_DEFAULTS, tracedPicture } from '../../../src/artwork/picture/tracedPicture.ts';
import { readArtwork, sizeIssue } from '../../../src/artwork/readArtwork.ts';
import { picturePixels, readArtworkLines, type Vec2 } from '../../../src/core/index.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';

/** A picture whose grey at each pixel is `value`. */
const grey = (width: number, height: number, value: (x: number, y: number) => number): Grey => ({
  width,
  height,
  values: Uint8Array.from({ length: width * height }, (_, i) => value(i % width, Math.floor(i / width))),
});

const signedArea = (line: readonly Vec2[]) =>
  line.slice(1).reduce((sum, [x, y], i) => sum + line[i]![0] * y - x * line[i]![1], 0) / 2;

/** PNG of a grey picture, with `alpha` for all pixels. */
function png({ width, height, values }: Grey, alpha = 255): Uint8Array {
  const picture = new PNG({ width, height });
  values.forEach((value, i) => {
    picture.data.set([value, value, value, alpha], 4 * i);
  });
  return PNG.sync.write(picture);
}

/** Decodes with readers that share nothing with a browser; small pictures only. */
const decode: PictureDecoder = async (bytes, { type }) => {
  const { width, height, data } = type === 'image/png' ? PNG.sync.read(Buffer.from(bytes)) : jpeg.decode(bytes);
  return greyOf(width, height, data);
};

describe('header', () => {
  test('the size of a PNG and of a JPEG is that which other programs wrote', () => {
    expect(pictureHeader(png(grey(31, 17, () => 0)))).toEqual({ type: 'image/png', width: 31, height: 17 });
    const { data } = jpeg.encode({ width: 40, height: 24, data: Buffer.alloc(40 * 24 * 4) }, 80);
    expect(pictureHeader(data)).toEqual({ type: 'image/jpeg', width: 40, height: 24 });
  });

  const sized = (width: number, height: number) => {
    const bytes = Uint8Array.from(png(grey(1, 1, () => 0)));
    new DataView(bytes.buffer).setUint32(16, width);
    new DataView(bytes.buffer).setUint32(20, height);
    return bytes;
  };

  test.each([
    [4000, 4000],
    [4032, 3024],
    [8000, 2000],
  ])('%i x %i pixels are taken', (width, height) => {
    expect(pictureHeader(sized(width, height))).toMatchObject({ width, height });
  });

  test.each([
    [4001, 4000],
    [8001, 10],
    [10_000, 10_000],
    [4_294_967_295, 4_294_967_295],
  ])('%i x %i pixels are refused by the header alone', async (width, height) => {
    let isDecoded = false;
    const read = await readArtwork({ name: 'a.png', bytes: sized(width, height) }, async (...given) => {
      isDecoded = true;
      return decode(...given);
    });
    expect(read).toMatchObject({ ok: false, issue: { code: 'too_large' } });
    expect(isDecoded).toBe(false);
  });

  test('a file over 8 MB, a cut header, and a size of 0 are refused', () => {
    const large = new Uint8Array(8_000_001);
    large.set(png(grey(9, 9, () => 0)));
    expect(() => pictureHeader(large)).toThrow('a file of 8.0 MB');
    expect(() => pictureHeader(png(grey(9, 9, () => 0)).subarray(0, 20))).toThrow('header is broken');
    expect(() => pictureHeader(sized(0, 9))).toThrow('header is broken');
    const { data } = jpeg.encode({ width: 40, height: 24, data: Buffer.alloc(40 * 24 * 4) }, 80);
    for (let end = 3; end < 170; end += 10)
      expect(() => pictureHeader(data.subarray(0, end))).toThrow('header is broken');
  });
});

describe('grey', () => {
  test('white and what is transparent leave the leather as it is; black is deepest; half of black is half', () => {
    const pixels = [255, 255, 255, 255, 0, 0, 0, 0, 0, 0, 0, 255, 0, 0, 0, 128, 255, 0, 0, 255];
    // 0.299 of red: ITU-R BT.601-7, 2.5.1.
    expect([...greyOf(5, 1, pixels).values]).toEqual([255, 255, 0, 127, 76]);
  });

  test('pictures are brought down to 512 pixels and never up', () => {
    expect(greySize(4000, 1000)).toEqual({ width: 512, height: 128 });
    expect(greySize(100, 30)).toEqual({ width: 100, height: 30 });
    expect(greySize(8000, 1)).toEqual({ width: 512, height: 1 });
  });
});

describe('threshold', () => {
  test('it lies in the middle between two greys, and between two heaps', () => {
    expect(otsuThreshold(Uint8Array.from([10, 10, 200, 200]))).toBe(106);
    const heaps = Uint8Array.from({ length: 1000 }, (_, i) => (i % 3 === 0 ? 40 + (i % 20) : 200 + (i % 30)));
    const threshold = otsuThreshold(heaps);
    expect(threshold).toBeGreaterThan(59);
    expect(threshold).toBeLessThan(201);
  });

  test('it is the best by the definition: no other parts with a larger variance between the two', () => {
    const between = (values: Uint8Array, threshold: number) => {
      const [dark, light] = [values.filter((v) => v < threshold), values.filter((v) => v >= threshold)];
      if (dark.length === 0 || light.length === 0) return 0;
      const mean = (part: Uint8Array) => part.reduce((sum, v) => sum + v, 0) / part.length;
      return dark.length * light.length * (mean(dark) - mean(light)) ** 2;
    };
    checkLaw(
      fc.property(fc.uint8Array({ minLength: 2, maxLength: 60 }), (values) => {
        const best = Math.max(...Array.from({ length: 255 }, (_, i) => between(values, i + 1)));
        expect(between(values, otsuThreshold(values))).toBeCloseTo(best, 4);
      }),
      { cost: 4 },
    );
  });
});

describe('outlines', () => {
  test('one dark pixel is a diamond about its centre', () => {
    const [line, ...rest] = tracedOutlines(
      grey(3, 3, (x, y) => (x === 1 && y === 1 ? 1 : 255)),
      128.5,
    );
    expect(rest).toEqual([]);
    expect(defined(line)).toHaveLength(5);
    for (const [x, y] of defined(line)) expect(Math.abs(x - 1.5) + Math.abs(y - 1.5)).toBeCloseTo(0.5, 6);
  });

  test('a disc has the area and the box of a disc, at the edge of the picture too', () => {
    // Grey by how far the pixel's centre is inside of the circle: an edge one pixel wide.
    const disc = grey(80, 60, (x, y) =>
      Math.max(0, Math.min(255, 128 + 128 * (Math.hypot(x + 0.5 - 40, y + 0.5 - 30) - 20))),
    );
    const [line, ...rest] = tracedOutlines(disc, 128);
    expect(rest).toEqual([]);
    expect(Math.abs(signedArea(defined(line))) / (Math.PI * 400)).toBeCloseTo(1, 2);
    expect(Math.max(...defined(line).map(([x]) => x))).toBeCloseTo(60, 1);
    const [full] = tracedOutlines(
      grey(10, 5, () => 0),
      128,
    );
    expect(Math.abs(signedArea(defined(full)))).toBeGreaterThan(48);
  });

  test('light areas within dark ones turn the other way: signed areas add up to the dark area', () => {
    const ring = grey(40, 40, (x, y) =>
      Math.max(Math.abs(x - 19.5), Math.abs(y - 19.5)) < 15 && Math.max(Math.abs(x - 19.5), Math.abs(y - 19.5)) > 8
        ? 0
        : 255,
    );
    const areas = tracedOutlines(ring, 128).map(signedArea);
    expect(areas).toHaveLength(2);
    expect(Math.sign(areas[0]!)).toBe(-Math.sign(areas[1]!));
    expect(Math.abs(areas[0]! + areas[1]!)).toBeCloseTo(900 - 256, -1);
  });

  test('outlines of any picture are closed, cross no pixel of the other kind, and part dark from light', () => {
    checkLaw(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        fc.uint8Array({ minLength: 81, maxLength: 81 }),
        fc.integer({ min: 1, max: 255 }),
        (width, height, noise, threshold) => {
          const picture = grey(width, height, (x, y) => noise[y * width + x]!);
          const outlines = tracedOutlines(picture, threshold);
          for (const line of outlines) expect(line.at(-1)).toEqual(line[0]);
          // A centre is inside of an odd number of outlines where it is dark: counted along a ray that meets no vertex.
          picture.values.forEach((value, i) => {
            const [px, py] = [(i % width) + 0.5, Math.floor(i / width) + 0.5 + 1e-7];
            const crossed = outlines.flatMap((line) =>
              line.slice(1).filter(([x, y], k) => {
                const [ax, ay] = line[k]!;
                return ay > py !== y > py && ax + ((py - ay) / (y - ay)) * (x - ax) > px;
              }),
            ).length;
            expect(crossed % 2 === 1).toBe(value < threshold);
          });
        },
      ),
    );
  });
});

test('softening keeps the mean within a picture and does not move an edge', () => {
  const soft = softened(grey(9, 9, (x) => (x < 4 ? 0 : 200)));
  expect([...soft.values.slice(0, 9)]).toEqual([0, 0, 0, 50, 150, 200, 200, 200, 200]);
  expect([...softened(grey(1, 1, () => 7)).values]).toEqual([7]);
});

describe('traced', () => {
  const blot = grey(200, 100, (x, y) =>
    Math.hypot(x - 60, y - 50) < 30 || (x >> 1 === 75 && y >> 1 === 25) ? 20 : 230,
  );

  test('a speck is dropped, an area is kept', () => {
    const lines = (speck_px: number) => readArtworkLines(tracedPicture(blot, { ...TRACE_DEFAULTS, speck_px }).lines);
    expect(lines(8)).toMatchObject({ polylines: { length: 1 } });
    expect(lines(0)).toMatchObject({ polylines: { length: 2 } });
  });

  test('a traced disc is round within half a pixel', () => {
    const { lines, width, height } = tracedPicture(blot, TRACE_DEFAULTS);
    const read = readArtworkLines(lines);
    if ('fault' in read) throw new Error(read.fault.got);
    // Its pixels reach 29.5 from the centre along the axes and up to 30 elsewhere.
    for (const [x, y] of read.polylines.flat())
      expect((Math.hypot(x - width / 2, y - height / 2) / 10_000) * 59).toBeCloseTo(29.8, 0);
  });

  test('a blank picture has nothing to trace', () => {
    expect(() =>
      tracedPicture(
        grey(9, 9, () => 255),
        TRACE_DEFAULTS,
      ),
    ).toThrow('no dark area');
  });
});

describe('laid as it is', () => {
  test('core reads the greys back, all of them where they fit', () => {
    const picture = grey(64, 32, (x, y) => (x * 4 + y) % 256);
    const { pixels, levels } = packedPixels(picture);
    expect(levels).toBe(256);
    expect(picturePixels({ id: 'a', name: 'a', kind: 'picture', width: 64, height: 32, pixels })).toEqual(
      picture.values,
    );
  });

  test('noise of 512 x 512 fits in fewer greys, each within half a step, and white stays white', () => {
    let seed = 1;
    const noise = grey(512, 512, (x) => {
      seed = (seed * 48_271) % 2_147_483_647;
      return x === 0 ? 255 : seed % 256;
    });
    const { pixels, levels } = packedPixels(noise);
    expect(pixels.length).toBeLessThanOrEqual(200_000);
    expect(levels).toBeLessThan(256);
    const back = defined(
      picturePixels({ id: 'b', name: 'b', kind: 'picture', width: 512, height: 512, pixels }) ?? undefined,
    );
    expect(back[0]).toBe(255);
    const farthest = back.reduce((most, value, i) => Math.max(most, Math.abs(value - noise.values[i]!)), 0);
    expect(farthest).toBeLessThanOrEqual(255 / (levels - 1) / 2 + 1);
  });
});

describe('a file', () => {
  const bytes = png(grey(60, 40, (x) => (x > 20 && x < 40 ? 0 : 255)));

  test('is read by what it is, whatever its name', async () => {
    const read = await readArtwork({ name: 'C:\\pictures\\my.crest.svg', bytes }, decode);
    expect(read).toMatchObject({ ok: true, artwork: { kind: 'lines', name: 'my.crest' }, width_mm: null, leftOut: [] });
  });

  test('is refused by its size before it is read', () => {
    expect(sizeIssue(8_000_000)).toBeNull();
    expect(sizeIssue(104_857_600)).toMatchObject({ code: 'too_large', got: 'a drawing that is a file of 104.9 MB' });
  });

  test('gives the same id when it is opened again, and another for other data', async () => {
    const id = async (use: 'lines' | 'picture') => {
      const read = await readArtwork({ name: 'a', bytes }, decode, { as: use });
      return read.ok ? read.artwork.id : '';
    };
    expect(await id('lines')).toMatch(/^[0-9a-f]{16}$/);
    expect(await id('lines')).toBe(await id('lines'));
    expect(await id('picture')).not.toBe(await id('lines'));
  });

  test('a JPEG is laid as it is', async () => {
    const { data } = jpeg.encode({ width: 16, height: 16, data: Buffer.alloc(16 * 16 * 4, 255) }, 90);
    const read = await readArtwork({ name: 'a.jpg', bytes: data }, decode, { as: 'picture' });
    expect(read).toMatchObject({ ok: true, artwork: { kind: 'picture', width: 16, height: 16 } });
  });

  test.each([
    ['an empty file', new Uint8Array(), 'is an empty file'],
    ['a packed SVG', Uint8Array.from([0x1f, 0x8b, 8, 0]), 'is packed'],
    ['a PDF', new TextEncoder().encode('%PDF-1.7'), 'another kind'],
    ['a GIF', new TextEncoder().encode('GIF89a'), 'another kind'],
    ['an SVG of 2 MB', new TextEncoder().encode(`<svg>${' '.repeat(2_000_000)}</svg>`), 'is a file of 2.0 MB'],
  ])('%s is refused', async (_, content, words) => {
    const read = await readArtwork({ name: 'a.svg', bytes: content }, decode);
    expect(read).toMatchObject({ ok: false, issue: { path: 'tooling.artworks' } });
    expect(read.ok ? '' : read.issue.words).toContain(words);
  });

  test('an SVG in UTF-16 or with a byte order mark is read', async () => {
    const text = '<svg viewBox="0 0 9 9"><path d="M0 0h9"/></svg>';
    const wide = (mark: number[], bytesOf: (code: number) => number[]) =>
      Uint8Array.from([...mark, ...[...text].flatMap((letter) => bytesOf(letter.charCodeAt(0)))]);
    for (const content of [
      wide([0xff, 0xfe], (code) => [code, 0]),
      wide([0xfe, 0xff], (code) => [0, code]),
      wide([0xef, 0xbb, 0xbf], (code) => [code]),
    ])
      expect(await readArtwork({ name: 'a', bytes: content }, decode)).toMatchObject({ ok: true });
  });
});
