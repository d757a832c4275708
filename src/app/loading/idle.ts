/** Longest that something put off is kept waiting, ms. */
const LONGEST_WAIT = 1500;

/** Resolves when the page has nothing more urgent to do. */
export const idle = (): Promise<void> =>
  new Promise((resolve) => {
    // Not every browser tells when it is idle.
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: LONGEST_WAIT });
    else setTimeout(resolve, 100);
  });
