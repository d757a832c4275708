import { type RefObject, useLayoutEffect, useState } from 'react';
import { type Insets, NO_INSETS } from '../scene/insets.ts';

/** Least share of a picture's height that is worth keeping free for the work. */
const LEAST_FREE = 0.4;

type Sides = Pick<DOMRect, 'top' | 'bottom' | 'left' | 'right'>;

/** How far words over the top of a picture and controls over its bottom reach into it, px. */
export function insetsOf(picture: Sides, words: Sides, controls: Sides): Insets {
  // On its side a telephone shows the words beside the picture.
  const top = words.right <= picture.left ? 0 : Math.max(0, Math.round(words.bottom - picture.top));
  const bottom = Math.max(0, Math.round(picture.bottom - controls.top));
  // Words that would leave too little of a low picture lie over the work.
  const fits = top + bottom <= (1 - LEAST_FREE) * (picture.bottom - picture.top);
  return { ...NO_INSETS, top: fits ? top : 0, bottom };
}

/**
 * How far what lies over a picture reaches in from its top and its bottom, px, kept up to date.
 * @param picture the whole of it
 * @param above lies over its top, or stands above it
 * @param below lies over its bottom
 */
export function useInsets(
  picture: RefObject<HTMLElement | null>,
  above: RefObject<HTMLElement | null>,
  below: RefObject<HTMLElement | null>,
): Insets {
  const [insets, setInsets] = useState(NO_INSETS);
  useLayoutEffect(() => {
    const [whole, over, under] = [picture.current, above.current, below.current];
    if (whole === null || over === null || under === null) return;
    const measure = (): void => {
      const box = whole.getBoundingClientRect();
      // Out of sight it has no size.
      if (box.height === 0) return;
      const next = insetsOf(box, over.getBoundingClientRect(), under.getBoundingClientRect());
      setInsets((last) => (last.top === next.top && last.bottom === next.bottom ? last : next));
    };
    const observer = new ResizeObserver(measure);
    for (const element of [whole, over, under]) observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [picture, above, below]);
  return insets;
}
