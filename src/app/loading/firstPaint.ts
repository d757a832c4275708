/** Longest wait for the first paint, ms: a page in the background is not painted. */
const LONGEST_WAIT = 1000;
const ENTRY = 'largest-contentful-paint';

/** Resolves once what the page shows first has reached the screen, so that nothing fetched late holds that up. */
export const firstPaint = new Promise<void>((resolve) => {
  const since = performance.now();
  setTimeout(resolve, LONGEST_WAIT);
  if (PerformanceObserver.supportedEntryTypes.includes(ENTRY)) {
    new PerformanceObserver((list, observer) => {
      // Earlier paints, such as the name of the page, do not count.
      if (!list.getEntries().some(({ startTime }) => startTime >= since)) return;
      observer.disconnect();
      resolve();
    }).observe({ type: ENTRY });
  } else {
    // The second frame is asked for once the first is on its way.
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  }
});
