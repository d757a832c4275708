import { encode } from 'jpeg-js';
import type { RenderedScene } from './renderedScene.ts';
import { renderedScene } from './renderedScene.ts';
import type { TestCamera, TestScene } from './testScene.ts';

/** What a camera writes beside the picture (CIPA DC-008, Exif 2.32). */
export interface Written {
  /** How the stored picture is to be turned (tag 0x0112): 1 not at all, 3 by half, 6 clockwise, 8 counterclockwise. */
  readonly orientation?: 1 | 3 | 6 | 8;
  /** Focal length for a picture of 36 mm by 24 mm (tag 0xA405), mm. */
  readonly focalIn35mm?: number;
}

/**
 * A photograph of a scene as a telephone's JPEG file, for tests in a browser:
 *
 *     const { scene, cameras } = drawnScene(7);
 *     const files = cameras.map((camera, i) => ({
 *       name: `book${i}.jpg`,
 *       mimeType: 'image/jpeg',
 *       buffer: photographFile(scene, camera, { orientation: 6, focalIn35mm: focalIn35mm(camera) }),
 *     }));
 *     await page.locator('input[type=file]').setInputFiles(files);
 *
 * The picture of `camera` is as the viewer sees it, whatever the orientation of the file. A camera by `smaller(camera, 2)` gives
 * the same photograph at half the width, which is quicker.
 */
export function photographFile(scene: TestScene, camera: TestCamera, written: Written = {}): Buffer {
  return fileOf(renderedScene(scene, camera), camera.quality, written);
}

/** A picture as a JPEG file. */
function fileOf(picture: RenderedScene, quality: number, written: Written = {}): Buffer {
  const { width, height, rgba } = stored(picture, written.orientation ?? 1);
  const { data } = encode({ width, height, data: rgba }, quality);
  // After the two bytes that begin a file.
  return Buffer.concat([data.subarray(0, 2), exifSegment(written), data.subarray(2)]);
}

/** What a camera with this lens would write as `focalIn35mm`: the standard's rule goes by the diagonal, and it is rounded. */
export const focalIn35mm = ({ lens, width, height }: TestCamera): number =>
  Math.round((lens.focal / Math.hypot(width, height)) * Math.hypot(36, 24));

/** The picture as it is stored, so that turned as the orientation says it is upright. */
function stored(picture: RenderedScene, orientation: 1 | 3 | 6 | 8): RenderedScene {
  if (orientation === 1) return picture;
  const { width, height } = picture;
  const from = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, width * height);
  const to = new Uint32Array(from.length);
  const isTurned = orientation !== 3;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const place =
        orientation === 3
          ? (height - 1 - y) * width + width - 1 - x
          : orientation === 6
            ? (width - 1 - x) * height + y
            : x * height + height - 1 - y;
      to[place] = from[y * width + x]!;
    }
  return {
    width: isTurned ? height : width,
    height: isTurned ? width : height,
    rgba: new Uint8Array(to.buffer),
  };
}

/** Segment APP1 with a TIFF structure: directory 0 with the orientation and the place of the Exif directory. */
function exifSegment({ orientation, focalIn35mm: focal }: Written): Buffer {
  if (orientation === undefined && focal === undefined) return Buffer.alloc(0);
  const SHORT = 3;
  const LONG = 4;
  const directory = (entries: readonly (readonly [tag: number, type: number, value: number])[]): Buffer => {
    const bytes = Buffer.alloc(2 + 12 * entries.length + 4);
    bytes.writeUInt16LE(entries.length, 0);
    entries.forEach(([tag, type, value], i) => {
      bytes.writeUInt16LE(tag, 2 + 12 * i);
      bytes.writeUInt16LE(type, 4 + 12 * i);
      bytes.writeUInt32LE(1, 6 + 12 * i);
      if (type === SHORT) bytes.writeUInt16LE(value, 10 + 12 * i);
      else bytes.writeUInt32LE(value, 10 + 12 * i);
    });
    return bytes;
  };
  const head = Buffer.from('II*\0\x08\0\0\0', 'latin1');
  const first = (place: number): Buffer =>
    directory([
      [0x0112, SHORT, orientation ?? 1],
      [0x8769, LONG, place],
    ]);
  const own = directory(focal === undefined ? [] : [[0xa405, SHORT, focal]]);
  const tiff = Buffer.concat([head, first(head.length + first(0).length), own]);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const start = Buffer.from([0xff, 0xe1, 0, 0]);
  start.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([start, body]);
}
