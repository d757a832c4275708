import type { CoverDesign } from '../../core/index.ts';
import type { PictureHandle } from './PictureTaker.tsx';

/** The scene of the stage and the cover in it; null while there is none. */
let held: { readonly scene: PictureHandle; readonly design: CoverDesign } | null = null;

export function holdScene(scene: PictureHandle | null, design: CoverDesign): void {
  held = scene && { scene, design };
}

/** The scene of the stage; null where it shows none, or another cover. */
export const heldScene = (design: CoverDesign): PictureHandle | null => (held?.design === design ? held.scene : null);
