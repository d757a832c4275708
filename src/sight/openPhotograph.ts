import { greyOf } from '../artwork/picture/grey.ts';
import { cameraOf } from './cameraOf.ts';
import type { ColourPicture } from './colourPicture.ts';
import { broughtDown, type GreyPicture } from './greyPicture.ts';
import {
  brokenFile,
  PHOTOGRAPH_LIMITS,
  type PhotographHeader,
  photographHeader,
  tooManyBytes,
} from './photographHeader.ts';
import { PhotographRefusal } from './photographRefusal.ts';

export interface OpenedPhotograph {
  /** Upright as the camera was held. */
  readonly grey: GreyPicture;
  /** In colours, for the eye and for outlines; its longer side 1600 at most. */
  readonly preview: ColourPicture;
  readonly camera: string;
  /** Focal length by what the camera wrote, pixels of `grey`; null where it wrote nothing. */
  readonly focal: number | null;
}

/** More pixels than these tell no more, but take longer: the picture is brought down to a half. */
const MOST_PIXELS = 25e6;
const PREVIEW_SIDE = 1600;
/** Rows that are read at once: some browsers refuse canvases of over 16 million pixels. */
const STRIP = 256;

/**
 * Opens a photograph with the browser's own decoder, turned as the camera was held. Nothing leaves the machine.
 *
 * It needs `createImageBitmap` and `OffscreenCanvas`, which a worker has too.
 * @throws PhotographRefusal where the file is not taken
 */
export async function openPhotograph(file: File): Promise<OpenedPhotograph> {
  if (file.size > PHOTOGRAPH_LIMITS.bytes) throw tooManyBytes(file.name, file.size);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const header = photographHeader(file.name, bytes);
  const bitmap = await decoded(file, header);
  try {
    const { width, height } = bitmap;
    if (width * height > header.width * header.height)
      throw new PhotographRefusal(
        file.name,
        `has ${width} x ${height} pixels but says ${header.width} x ${header.height}`,
        'a picture of the size that it says',
        'open it in a picture program and save it as JPEG, then choose that file',
      );
    const whole = greyBitmap(bitmap);
    const grey = broughtDown(whole, Math.ceil(Math.sqrt((width * height) / MOST_PIXELS)));
    const { camera, focal } = await cameraOf(bytes, grey.width, grey.height);
    return {
      grey,
      preview: previewOf(bitmap),
      camera,
      focal: focal && focal * Math.hypot(grey.width, grey.height),
    };
  } finally {
    bitmap.close();
  }
}

async function decoded(file: File, { type }: PhotographHeader): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file.slice(0, file.size, type), { imageOrientation: 'from-image' });
  } catch {
    if (type !== 'image/heic') throw brokenFile(file.name);
    throw new PhotographRefusal(
      file.name,
      'is a HEIC picture, which this browser cannot open',
      'JPEG, PNG, WebP or AVIF',
      'set the camera to its most compatible format, or send the photograph to yourself as JPEG, then choose that file',
    );
  }
}

function greyBitmap(bitmap: ImageBitmap): GreyPicture {
  const { width, height } = bitmap;
  const values = new Uint8Array(width * height);
  const context = contextOf(width, Math.min(STRIP, height));
  for (let top = 0; top < height; top += STRIP) {
    const rows = Math.min(STRIP, height - top);
    context.drawImage(bitmap, 0, -top);
    values.set(greyOf(width, rows, context.getImageData(0, 0, width, rows).data).values, top * width);
  }
  return { width, height, values };
}

function previewOf(bitmap: ImageBitmap): ColourPicture {
  const scale = Math.min(1, PREVIEW_SIDE / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [Math.round(bitmap.width * scale), Math.round(bitmap.height * scale)];
  const context = contextOf(width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  return { width, height, rgba: context.getImageData(0, 0, width, height).data as Uint8ClampedArray<ArrayBuffer> };
}

function contextOf(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })!;
  // Nothing of what was drawn before is left where the picture is transparent.
  context.globalCompositeOperation = 'copy';
  return context;
}
