import { type RefObject, useEffect } from 'react';
import type { PictureHandle } from '../scene/PictureTaker.tsx';

/** Pixels of a printed picture: 300 to the inch on half a page's width. */
export const PRINTED = { width: 1200, height: 900 } as const;

/** A scene, and the plain canvas that stands in for it on paper. */
export interface PrintedPicture {
  readonly scene: RefObject<PictureHandle | null>;
  readonly paper: RefObject<HTMLCanvasElement | null>;
}

/**
 * Draws the scenes onto plain canvases whenever the page is about to be printed, by whatever command, for what a graphics
 * card has drawn is not always there to print.
 */
export function usePrintedPictures(pictures: readonly PrintedPicture[]): void {
  useEffect(() => {
    const paint = (): void => {
      for (const { scene, paper } of pictures) {
        if (scene.current === null || paper.current === null) continue;
        try {
          scene.current.paint(paper.current, PRINTED, '#ffffff');
          paper.current.hidden = false;
        } catch {
          // Too large for this graphics card: the scene itself is printed, as well as the browser can.
          paper.current.hidden = true;
        }
      }
    };
    window.addEventListener('beforeprint', paint);
    return () => window.removeEventListener('beforeprint', paint);
  }, [pictures]);
}
