import { idle } from './idle.ts';

/** How long nothing may have kept the page busy, ms. */
const QUIET = 1500;
/** Longest wait, ms. */
const LONGEST_WAIT = 10_000;
const INPUTS = ['pointermove', 'pointerdown', 'keydown', 'wheel', 'touchstart', 'focusin'] as const;

/**
 * Resolves with the maker's first input, or once the page has had no long task for a while: for what keeps page and driver busy
 * and nobody has asked for yet.
 */
export const quiet = (): Promise<void> =>
  new Promise<void>((resolve) => {
    let waiting = setTimeout(end, QUIET);
    const last = setTimeout(end, LONGEST_WAIT);
    const busy = new PerformanceObserver(() => {
      clearTimeout(waiting);
      waiting = setTimeout(end, QUIET);
    });
    function end(): void {
      busy.disconnect();
      clearTimeout(waiting);
      clearTimeout(last);
      for (const type of INPUTS) window.removeEventListener(type, end, true);
      resolve();
    }
    for (const type of INPUTS) window.addEventListener(type, end, { capture: true, passive: true });
    // Not every browser tells of long tasks.
    if (PerformanceObserver.supportedEntryTypes.includes('longtask')) busy.observe({ type: 'longtask' });
  }).then(idle);
