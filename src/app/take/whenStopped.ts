/** Rejects with the reason of a signal once it tells to stop, to be raced against the work that it stops. */
export const whenStopped = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason));
  });
