import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** What there is to draw in on paper, px: within the margins of A4 and Letter, the height beside a picture. */
const PAPER = { width: 660, height: 290 } as const;

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
    // At once: a frame drawn to the size of before would lie over its neighbours. A print waits for nothing at all.
    const draw = (size: number): void => flushSync(() => setExtent(Math.floor(size)));
    const measure = (): void => draw(side === 'width' ? element.clientWidth : element.clientHeight);
    const fitPaper = (): void => draw(PAPER[side]);
    const observer = new ResizeObserver(([entry]) => draw(entry!.contentRect[side]));
    observer.observe(element);
    window.addEventListener('beforeprint', fitPaper);
    window.addEventListener('afterprint', measure);
    setExtent(Math.floor(side === 'width' ? element.clientWidth : element.clientHeight));
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', fitPaper);
      window.removeEventListener('afterprint', measure);
    };
  }, [side]);
  return [ref, extent];
}
