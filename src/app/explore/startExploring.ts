/** Starts a worker that answers questions of Explore. */
export const startExploring = (): Worker =>
  new Worker(new URL('./explore.worker.ts', import.meta.url), { type: 'module' });
