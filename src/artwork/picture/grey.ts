/** A picture in greys, row by row from the top: 255 is leather left as it is, 0 the deepest. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** Longer side of a picture as it is kept. */
const GREY_SIDE = 512;

/** The size that a picture is brought down to, its longer side 512 at most. */
export function greySize(width: number, height: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, GREY_SIDE / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/**
 * Greys of red, green, blue and alpha, 4 bytes a pixel: luma by ITU-R BT.601, 0.299 R + 0.587 G + 0.114 B, laid on white, so that
 * what is transparent leaves the leather as it is.
 */
export function greyOf(width: number, height: number, rgba: ArrayLike<number>): Grey {
  const values = new Uint8Array(width * height);
  for (let i = 0; i < values.length; i++) {
    const luma = 0.299 * rgba[4 * i]! + 0.587 * rgba[4 * i + 1]! + 0.114 * rgba[4 * i + 2]!;
    values[i] = Math.round(255 + (rgba[4 * i + 3]! / 255) * (luma - 255));
  }
  return { width, height, values };
}
