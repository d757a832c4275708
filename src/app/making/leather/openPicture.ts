import { isPicture, type PictureHeader, pictureHeader } from '../../../artwork/picture/pictureHeader.ts';
import { Refusal } from '../../../artwork/refusal.ts';

/** Longer side of a picture as it is kept, px: finer than a screen, and a few MB where a camera gives sixty. */
const LONGEST = 2400;

/** What a telephone's camera gives at most. Decoded, 64 million pixels take 256 MB for a moment. */
const LIMITS = { bytes: 40_000_000, pixels: 64_000_000, side: 16_000 } as const;

export interface OpenedPicture {
  /** Address of it in this window; its maker lets it go. */
  readonly address: string;
  readonly width: number;
  readonly height: number;
}

/**
 * A picture of a hide from a file or a camera, turned as it was taken and made smaller. It never leaves the browser.
 *
 * Rejects with an Error in words for the maker where it is none, is too large, or cannot be decoded.
 */
export async function openPicture(file: File): Promise<OpenedPicture> {
  const { bytes: most } = LIMITS;
  if (file.size > most)
    throw new Error(
      `The picture takes ${megabytes(file.size)} MB; up to ${megabytes(most)} MB is allowed. Make it smaller first.`,
    );
  const buffer = await file.arrayBuffer().catch(() => {
    throw new Error(`“${file.name}” cannot be read. Choose it again: it may have been moved.`);
  });
  const bytes = new Uint8Array(buffer);
  if (!isPicture(bytes))
    throw new Error(`“${file.name}” is no PNG or JPEG picture. Save it as one of these and open it again.`);
  const { type } = headerOf(bytes);
  const blob = new Blob([bytes], { type });
  const bitmap = await createImageBitmap(blob, { imageOrientation: 'from-image' }).catch(() => {
    throw new Error('The picture cannot be decoded here. Save it again from a picture program, smaller.');
  });
  const share = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [bitmap.width, bitmap.height].map((side) => Math.max(1, Math.round(share * side))) as [
    number,
    number,
  ];
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d')!;
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const smaller = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
  return { address: URL.createObjectURL(smaller), width, height };
}

function headerOf(bytes: Uint8Array): PictureHeader {
  try {
    return pictureHeader(bytes, LIMITS);
  } catch (error) {
    throw error instanceof Refusal ? new Error(`The file ${error.message}. Make it smaller, or save it again.`) : error;
  }
}

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);
