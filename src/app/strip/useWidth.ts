import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Inner width of an element, px, kept up to date. */
export function useWidth<E extends HTMLElement>(): readonly [RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => setWidth(Math.floor(entry!.contentRect.width)));
    observer.observe(element);
    setWidth(Math.floor(element.clientWidth));
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
