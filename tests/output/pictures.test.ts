import { DOMParser } from '@xmldom/xmldom';
import { zlibSync } from 'fflate';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { type Drawing, noLayers, type Picture, path } from '../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../src/core/pattern/mirrorDrawing.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { readDxf } from './cuttingFileReading.ts';
import { lyingOn } from './patternReading.ts';
import { readPdf } from './pdfReading.ts';

/** Six greys, three in a row. */
const GREY = Uint8Array.of(0, 50, 100, 150, 200, 255);

const picture = (pixels: Uint8Array): Picture => ({
  kind: 'picture',
  artwork: {
    id: 'p',
    name: 'picture',
    kind: 'picture',
    width: 3,
    height: 2,
    pixels: Buffer.from(zlibSync(pixels)).toString('base64'),
  },
  origin: [20, 40],
  along: [30, 10],
  down: [5, -15],
});

/** A piece of 100 by 60 mm with a picture on it, turned and slanted. */
function drawing(pixels = GREY): Drawing {
  const outline = rectangle([0, 0], [100, 60]);
  const layers = { ...noLayers(), cut: [path(outline, true)], tooling: [picture(pixels)] };
  const piece = { id: 'outside', name: 'Outside', count: 1, width: 100, height: 60, outline, layers } as const;
  return {
    title: 'Picture',
    units: 'mm',
    faceUp: 'grain side up',
    pieces: [{ ...piece, sums: [], holes: 0, unwritten: [] }],
    lengths: [],
    holes: 0,
    notes: [],
  };
}

const near = ([x, y]: Vec2) => [expect.closeTo(x, 3), expect.closeTo(y, 3)];
/** Top left, top right and bottom left corner on the piece, plain and mirrored in its upright middle. */
const CORNERS: readonly Vec2[] = [
  [20, 40],
  [50, 50],
  [25, 25],
];
const MIRRORED = CORNERS.map(([x, y]): Vec2 => [100 - x, y]);

describe('a picture that is laid as it is', () => {
  test.each([
    ['plain', false, CORNERS],
    ['mirrored', true, MIRRORED],
  ] as const)('stands in the PDF by its corners, %s', async (_, mirrored, corners) => {
    const page = nth(await readPdf(await patternPdf(drawing(), { mirrored })), 0);
    const outline = lyingOn(page, nth(drawing().pieces, 0));
    const [left, low] = [Math.min(...outline.map(([x]) => x)), Math.min(...outline.map(([, y]) => y))];
    const { topLeft, topRight, bottomLeft, width, height } = nth(page.pictures, 0);
    expect([width, height]).toEqual([3, 2]);
    expect([topLeft, topRight, bottomLeft].map(([x, y]): Vec2 => [x - left, y - low])).toEqual(corners.map(near));
  });

  test.each([
    ['plain', false, CORNERS],
    ['mirrored', true, MIRRORED],
  ] as const)('is embedded in the SVG with its greys, %s', (_, mirrored, corners) => {
    const root = defined(
      new DOMParser().parseFromString(patternSvg(drawing(), { mirrored }), 'image/svg+xml').documentElement,
    );
    const image = nth(Array.from(root.getElementsByTagName('image')), 0);
    expect((image.parentNode as unknown as { getAttribute(name: string): string }).getAttribute('class')).toBe(
      'tooling',
    );
    const [a, b, c, d, x, y] = defined(/matrix\((.*)\)/.exec(image.getAttribute('transform') ?? '')?.[1])
      .split(' ')
      .map(Number) as [number, number, number, number, number, number];
    // The piece stands 10 mm from the left and its foot 70 mm down.
    const onPiece = ([u, v]: Vec2): Vec2 => [u - 10, 70 - v];
    expect(
      (
        [
          [x, y],
          [x + a, y + b],
          [x + c, y + d],
        ] as const
      ).map(onPiece),
    ).toEqual(corners.map(near));
    const [, base64] = defined(image.getAttribute('href')).split('base64,');
    const { width, height, data } = PNG.sync.read(Buffer.from(defined(base64), 'base64'));
    expect([width, height]).toEqual([3, 2]);
    expect(Array.from({ length: 6 }, (_, i) => data[4 * i])).toEqual([...GREY]);
  });

  test('is a frame on the layer MARK of the DXF, and a note says where it is', () => {
    const text = patternDxf(drawing());
    const { found } = readDxf(text);
    const frame = defined(found.find(({ layer }) => layer === 'MARK'));
    expect(frame.points.slice(0, 4)).toEqual(expect.arrayContaining(([...CORNERS, [55, 35]] as Vec2[]).map(near)));
    expect(found.filter(({ layer }) => layer === 'TOOLING')).toEqual([]);
    expect(found.map(({ text }) => text).join(' ')).toMatch(/Pictures are not in this file\. .*layer MARK/);
    expect(patternDxf(drawing(), { layers: ['cut', 'tooling'] })).toMatch(/^999\n.*Pictures are not in this file/ms);
  });

  test('is a frame where its data are damaged', async () => {
    const damaged = drawing(Uint8Array.of(1, 2));
    expect(nth(await readPdf(await patternPdf(damaged)), 0).pictures).toEqual([]);
    expect(patternSvg(damaged)).not.toContain('<image');
  });

  test('is mirrored with its piece, twice as it was', () => {
    expect(mirroredDrawing(mirroredDrawing(drawing())).pieces).toEqual(drawing().pieces);
  });
});
