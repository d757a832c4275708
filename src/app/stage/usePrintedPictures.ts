import { useEffect } from 'react';
import type { CoverDesign } from '../../core/index.ts';
import { heldScene } from '../scene/heldScene.ts';
import type { CoverPicture } from './coverPicture.ts';

/** Pixels of a printed picture: 300 to the inch on half a page's width. */
export const PRINTED = { width: 1200, height: 900 } as const;

/**
 * A picture of a cover as the stage shows it, as a data address. Taken at once: a print waits for nothing.
 * @returns null where the stage shows no scene, or another cover, or memory is short
 */
export function printedPicture(design: CoverDesign): string | null {
  try {
    return heldScene(design)?.takeAtOnce(PRINTED, '#ffffff') ?? null;
  } catch {
    return null;
  }
}

/**
 * Takes pictures of the scenes whenever the page is about to be printed, because a canvas of the graphics card does not
 * always print. They must be there before the event ends, so they are taken synchronously.
 */
export function usePrintedPictures(pictures: readonly CoverPicture[]): void {
  useEffect(() => {
    const take = (): void => {
      for (const { scene, paper } of pictures) {
        if (scene.current === null || paper.current === null) continue;
        try {
          paper.current.src = scene.current.takeAtOnce(PRINTED, '#ffffff');
          paper.current.hidden = false;
        } catch {
          // Too large for this graphics card: the scene itself is printed, as well as the browser can.
          paper.current.hidden = true;
        }
      }
    };
    window.addEventListener('beforeprint', take);
    return () => window.removeEventListener('beforeprint', take);
  }, [pictures]);
}
