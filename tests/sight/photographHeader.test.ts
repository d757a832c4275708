import { encode } from 'jpeg-js';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { cameraOf } from '../../src/sight/cameraOf.ts';
import { photographHeader } from '../../src/sight/photographHeader.ts';
import { nth } from '../nth.ts';
import { drawnScene } from '../scenes/drawnScene.ts';
import { photographFile } from '../scenes/photographFile.ts';

const jpeg = (width: number, height: number): Uint8Array =>
  new Uint8Array(encode({ width, height, data: new Uint8Array(4 * width * height) }, 50).data);
const png = (width: number, height: number): Uint8Array => new Uint8Array(PNG.sync.write(new PNG({ width, height })));
const ascii = (text: string): number[] => [...text].map((sign) => sign.charCodeAt(0));
const big = (value: number): number[] => [24, 16, 8, 0].map((by) => (value >>> by) & 255);
const box = (name: string, ...parts: readonly (readonly number[])[]): number[] => {
  const inside = parts.flat();
  return [...big(8 + inside.length), ...ascii(name), ...inside];
};
const still = (brand: string): Uint8Array =>
  Uint8Array.from([
    ...box('ftyp', ascii(brand), big(0), ascii('mif1')),
    ...box('meta', box('ispe', big(0), big(512), big(512)), box('ispe', big(0), big(4032), big(3024))),
  ]);
const webp = (chunk: readonly number[]): Uint8Array =>
  Uint8Array.from([...ascii('RIFF'), ...big(0), ...ascii('WEBP'), ...chunk, ...new Array(10).fill(0)]);
/** A photograph whose header says that it is larger than it is. */
const lying = (width: number, height: number): Uint8Array => {
  const bytes = jpeg(16, 16);
  const at = bytes.findIndex((byte, i) => byte === 0xff && bytes[i + 1] === 0xc0);
  new DataView(bytes.buffer).setUint32(at + 5, height * 65536 + width);
  return bytes;
};

describe('the header of a photograph', () => {
  it('gives kind and size of JPEG, PNG, WebP, AVIF and HEIC', () => {
    expect(photographHeader('a', jpeg(900, 20))).toEqual({ type: 'image/jpeg', width: 900, height: 20 });
    expect(photographHeader('a', png(20, 900))).toEqual({ type: 'image/png', width: 20, height: 900 });
    expect(photographHeader('a', still('heic'))).toEqual({ type: 'image/heic', width: 4032, height: 3024 });
    expect(photographHeader('a', still('avif'))).toEqual({ type: 'image/avif', width: 4032, height: 3024 });
    // RFC 9649: 4000 x 3000 in the three kinds of chunk, sizes less one in two of them.
    const plain = [...ascii('VP8 '), ...big(0), 0, 0, 0, 0x9d, 0x01, 0x2a, 0xa0, 0x0f, 0xb8, 0x0b];
    const lossless = [...ascii('VP8L'), ...big(0), 0x2f, 0x9f, 0xcf, 0xed, 0x02];
    const extended = [...ascii('VP8X'), ...big(0), 0, 0, 0, 0, 0x9f, 0x0f, 0, 0xb7, 0x0b, 0];
    for (const chunk of [plain, lossless, extended])
      expect(photographHeader('a', webp(chunk))).toEqual({ type: 'image/webp', width: 4000, height: 3000 });
  });

  it('takes 48 megapixel', () => {
    expect(photographHeader('a', lying(8064, 6048)).width).toBe(8064);
  });

  it.each([
    ['an empty file', new Uint8Array(0), 'is an empty file'],
    ['a text', Uint8Array.from(ascii('Dear customer, here is the book.')), 'is not a picture'],
    ['a film', Uint8Array.from(box('ftyp', ascii('isom'), big(0))), 'is not a picture'],
    ['one pixel', jpeg(1, 1), 'has 1 x 1 pixels'],
    ['a thumbnail', png(640, 480), 'has 640 x 480 pixels'],
    ['more pixels than any telephone', lying(60000, 60000), 'has 60000 x 60000 pixels'],
    ['half a JPEG', jpeg(900, 600).slice(0, -2), 'is a picture that is not whole'],
    ['half a PNG', png(900, 600).slice(0, -20), 'is a picture that is not whole'],
    ['only the head of a JPEG', jpeg(900, 600).slice(0, 12), 'is a picture that is not whole'],
    ['a WebP without its picture', webp(ascii('ALPH')), 'is a picture that is not whole'],
    ['a HEIC without its size', still('heic').slice(0, 30), 'is a picture that is not whole'],
  ])('refuses %s by its name, with what is allowed and what to do', (_, bytes, got) => {
    const refused = (): unknown => photographHeader('folder/my book.jpg', bytes);
    expect(refused).toThrow(new RegExp(`^my book.jpg ${got}; allowed: .+\\. [A-Z].+\\.$`));
  });
});

describe('what a camera wrote', () => {
  it('gives the focal length by the diagonal, and a name that a turned picture shares', async () => {
    const { scene, cameras } = drawnScene(5, { kind: 'small', longSide: 200 });
    const camera = nth(cameras, 0);
    const file = new Uint8Array(photographFile(scene, camera, { orientation: 6, focalIn35mm: 26 }));
    const { camera: name, focal } = await cameraOf(file, 4000, 3000);
    // 26 mm on a film whose diagonal is 43.27 mm (CIPA DC-008, tag 0xA405).
    expect(focal).toBeCloseTo(26 / 43.2666, 4);
    expect(await cameraOf(file, 3000, 4000)).toEqual({ camera: name, focal });
    expect(name).not.toBe((await cameraOf(file, 4032, 3024)).camera);
    expect(await cameraOf(jpeg(900, 20), 900, 20)).toEqual({ camera: '900 20', focal: null });
    expect(await cameraOf(Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 9]), 900, 20)).toEqual({
      camera: '900 20',
      focal: null,
    });
  });
});
