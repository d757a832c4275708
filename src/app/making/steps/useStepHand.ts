import { type RefObject, useEffect, useRef } from 'react';

/** What a hand can do in the mode, by key or finger. */
interface StepHand {
  readonly forward: () => void;
  readonly back: () => void;
  readonly finish: () => void;
  /** Goes to the step of an index, if there is one. */
  readonly goTo: (index: number) => void;
}

/** Least way of a swipe, px; and how much more it goes across than down. */
const SWIPE = { way: 56, lean: 1.5 } as const;

/** Elements that take Enter, digits or arrows themselves. */
const TAKES_KEYS = 'button, summary, a, input, select, textarea';

/**
 * Keys and swipes within a part: arrows and swipes go back and forward, Enter marks the step as done, a digit goes to the
 * step of that number (0: the tenth). Keys count only while the focus is within the part.
 */
export function useStepHand(part: RefObject<HTMLElement | null>, hand: StepHand): void {
  const latest = useRef(hand);
  useEffect(() => {
    latest.current = hand;
  });
  useEffect(() => {
    const element = part.current;
    if (element === null) return;
    const stop = new AbortController();
    const { signal } = stop;
    element.addEventListener('keydown', (event) => onKey(event, latest.current), { signal });
    let start: PointerEvent | null = null;
    element.addEventListener(
      'pointerdown',
      (event) => {
        // A second finger pinches, and a page that is zoomed in is dragged about.
        const isSwipe = event.pointerType === 'touch' && event.isPrimary && (window.visualViewport?.scale ?? 1) < 1.05;
        start = isSwipe ? event : null;
      },
      { signal },
    );
    element.addEventListener(
      'pointerup',
      (event) => {
        if (start === null || event.pointerId !== start.pointerId) return;
        const [across, down] = [event.clientX - start.clientX, event.clientY - start.clientY];
        start = null;
        if (Math.abs(across) < SWIPE.way || Math.abs(across) < SWIPE.lean * Math.abs(down)) return;
        if (across < 0) latest.current.forward();
        else latest.current.back();
      },
      { signal },
    );
    return () => stop.abort();
  }, [part]);
}

function onKey(event: KeyboardEvent, { forward, back, finish, goTo }: StepHand): void {
  if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return;
  const isTaken = event.target instanceof Element && event.target.closest(TAKES_KEYS) !== null;
  if (event.key === 'ArrowRight') forward();
  else if (event.key === 'ArrowLeft') back();
  else if (/^\d$/.test(event.key)) goTo((Number(event.key) + 9) % 10);
  else if (event.key === 'Enter' && !isTaken) finish();
  else return;
  event.preventDefault();
}
