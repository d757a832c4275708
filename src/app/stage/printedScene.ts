import type { CoverDesign } from '../../core/index.ts';
import type { PictureHandle } from '../scene/PictureTaker.tsx';
import { PRINTED } from './usePrintedPictures.ts';

/** The scene of the stage and the cover in it; null while there is none. */
let held: { readonly scene: PictureHandle; readonly design: CoverDesign } | null = null;

export function holdPrintedScene(scene: PictureHandle | null, design: CoverDesign): void {
  held = scene && { scene, design };
}

/**
 * A picture of a cover as the stage shows it, as a data address. Taken at once: a print waits for nothing.
 * @returns null where the stage shows no scene, or another cover, or the graphics card cannot draw that large
 */
export function printedScene(design: CoverDesign): string | null {
  if (held?.design !== design) return null;
  try {
    return held.scene.takeAtOnce(PRINTED, '#ffffff');
  } catch {
    return null;
  }
}
