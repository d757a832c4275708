import { type Artwork, cached, picturePixels } from '../../../core/index.ts';

const addresses = new Map<string, string | null>();

/** Pictures kept at once; a job has 12 at most. */
const KEPT = 24;

/** An address of a picture laid on the leather as the page shows it: darker where it is pressed deeper, clear where it is not. */
export function pictureAddress(artwork: Extract<Artwork, { kind: 'picture' }>): string | null {
  return cached(addresses, artwork.pixels, KEPT, () => {
    const grey = picturePixels(artwork);
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [artwork.width, artwork.height];
    const context = canvas.getContext('2d');
    if (grey === null || context === null) return null;
    const image = context.createImageData(artwork.width, artwork.height);
    grey.forEach((value, i) => {
      // The brown of pressed leather.
      image.data.set([107, 68, 35, 255 - value], 4 * i);
    });
    context.putImageData(image, 0, 0);
    return canvas.toDataURL('image/png');
  });
}
