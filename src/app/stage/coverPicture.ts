import { useState } from 'react';
import type { PictureHandle } from '../scene/PictureTaker.tsx';

/** A scene and its printed picture. */
export interface CoverPicture {
  readonly scene: { readonly current: PictureHandle | null };
  readonly paper: { current: HTMLImageElement | null };
  /** Resolves when a picture of the scene can be taken, or the scene is known to be missing. */
  readonly settled: Promise<void>;
  readonly holdScene: (scene: PictureHandle | null) => void;
  readonly tellMissing: () => void;
}

function coverPicture(): CoverPicture {
  const scene: { current: PictureHandle | null } = { current: null };
  let settle = (): void => {};
  const settled = new Promise<void>((resolve) => {
    settle = resolve;
  });
  const holdScene = (found: PictureHandle | null): void => {
    scene.current = found;
    if (found !== null) settle();
  };
  return { scene, paper: { current: null }, settled, holdScene, tellMissing: () => settle() };
}

/** A cover's picture that lasts as long as the component. */
export const useCoverPicture = (): CoverPicture => useState(coverPicture)[0];
