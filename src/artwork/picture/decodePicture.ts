import { Refusal } from '../refusal.ts';
import { type Grey, greyOf, greySize } from './grey.ts';
import type { PictureHeader } from './pictureHeader.ts';

/** Gives the greys of a picture whose header was found to be within the limits; rejects where it cannot be decoded. */
export type PictureDecoder = (bytes: Uint8Array, header: PictureHeader) => Promise<Grey>;

/**
 * Decodes a picture with the browser's own decoder, turned by the orientation that a camera wrote, brought down to 512 pixels.
 * It needs `createImageBitmap` and `OffscreenCanvas`, which a worker has too.
 *
 * @throws Refusal where it cannot be decoded, or is not of the size that its header says
 */
export const decodePicture: PictureDecoder = async (bytes, { type, width, height }) => {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type }), { imageOrientation: 'from-image' });
  } catch {
    throw new Refusal(
      'unreadable',
      'is a picture that cannot be decoded',
      'a whole PNG or JPEG',
      'save it again from a picture program',
    );
  }
  try {
    const isAsSaid = bitmap.width * bitmap.height === width * height && [width, height].includes(bitmap.width);
    if (!isAsSaid)
      throw new Refusal(
        'unreadable',
        'is a picture of another size than its header says',
        'a whole PNG or JPEG',
        'save it again from a picture program',
      );
    const size = greySize(bitmap.width, bitmap.height);
    const context = new OffscreenCanvas(size.width, size.height).getContext('2d', { willReadFrequently: true })!;
    context.imageSmoothingQuality = 'high';
    context.drawImage(bitmap, 0, 0, size.width, size.height);
    return greyOf(size.width, size.height, context.getImageData(0, 0, size.width, size.height).data);
  } finally {
    bitmap.close();
  }
};
