import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Inner width of an element, px, kept up to date. */
export const useWidth = <E extends HTMLElement>() => useExtent<E>('width');

/** Inner height of an element, px, kept up to date. */
export const useHeight = <E extends HTMLElement>() => useExtent<E>('height');

function useExtent<E extends HTMLElement>(side: 'width' | 'height'): readonly [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [extent, setExtent] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => setExtent(Math.floor(entry!.contentRect[side])));
    observer.observe(element);
    setExtent(Math.floor(side === 'width' ? element.clientWidth : element.clientHeight));
    return () => observer.disconnect();
  }, [side]);
  return [ref, extent];
}
