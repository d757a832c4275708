import { type RefObject, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { PictureHandle } from '../scene/PictureTaker.tsx';

type Handle = RefObject<PictureHandle | null>;

/** Pixels of a printed picture: 300 to the inch on half a page's width. */
export const PRINTED = { width: 1200, height: 900 } as const;

/**
 * Pictures of both covers as addresses of their own, for printers draw no canvas.
 * `take` takes them anew and returns when the page shows them.
 */
export function usePrintedPictures(closed: Handle, open: Handle) {
  const [pictures, setPictures] = useState<readonly [string, string] | null>(null);
  useEffect(
    () => () => {
      for (const address of pictures ?? []) URL.revokeObjectURL(address);
    },
    [pictures],
  );
  const take = async (): Promise<void> => {
    const blobs = await Promise.all(
      [closed, open].map(({ current }) => current?.take(PRINTED, 'image/jpeg', '#ffffff')),
    );
    const [first, second] = blobs.map((blob) => blob && URL.createObjectURL(blob));
    if (!first || !second) return;
    flushSync(() => setPictures([first, second]));
    await Promise.all(
      [...document.querySelectorAll<HTMLImageElement>('.customer-scene img')].map((img) => img.decode()),
    );
  };
  return { pictures, take };
}
