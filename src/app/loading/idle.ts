/** Longest wait, ms. */
const LONGEST_WAIT = 1500;

/** Resolves when the page has nothing more urgent to do. */
export const idle = (): Promise<void> =>
  new Promise((resolve) => {
    // Not every browser has idle callbacks.
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: LONGEST_WAIT });
    else setTimeout(resolve, 100);
  });
