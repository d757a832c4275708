import { type RefObject, useLayoutEffect, useState } from 'react';
import { type Insets, NO_INSETS } from '../scene/insets.ts';

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
      const { top, bottom, height, left } = whole.getBoundingClientRect();
      const words = over.getBoundingClientRect();
      // Out of sight it has no size; on its side a telephone shows the words beside it.
      if (height === 0) return;
      const next = {
        ...NO_INSETS,
        top: words.right <= left ? 0 : Math.max(0, Math.round(words.bottom - top)),
        bottom: Math.max(0, Math.round(bottom - under.getBoundingClientRect().top)),
      };
      // What leaves less than half of the picture is not kept clear of.
      const fits = next.top + next.bottom <= height / 2;
      setInsets((last) => {
        const shown = fits ? next : { ...next, top: 0 };
        return last.top === shown.top && last.bottom === shown.bottom ? last : shown;
      });
    };
    const observer = new ResizeObserver(measure);
    for (const element of [whole, over, under]) observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [picture, above, below]);
  return insets;
}
