import { openHidePhotograph } from './openHidePhotograph.ts';
import { pictureSheet } from './pictureScale.ts';
import type { AddedPicture } from './useHidePicture.ts';

/**
 * A photograph of a hide with pages of the sheet on it, flat and to scale, for under the drawing.
 *
 * @returns null for a picture without a sheet
 */
export async function openSheetPicture(file: File, isMirrored: boolean): Promise<Omit<AddedPicture, 'name'> | null> {
  // What cannot be looked through may still be a picture to draw over.
  const found = await openHidePhotograph({ file, isMirrored }).catch(() => null);
  if (found === null) return null;
  const { bytes, width, height, mm, u, uPrint, pages, seen } = found;
  const address = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
  return { address, width, height, mm, sheet: pictureSheet(pages[0]!, u, uPrint), seen: seen ?? undefined };
}
