import { Worker } from 'node:worker_threads';
import type { BatchResult, Task } from './batchWork.ts';
import type { Row } from './row.ts';

/** Threads that work on batches of rows. */
export interface Pool {
  run(rows: readonly Row[]): Promise<BatchResult>;
  close(): Promise<void>;
}

interface Pending {
  resolve(result: BatchResult): void;
  reject(error: unknown): void;
}

/**
 * Starts threads that each run the script at `script` with `task` as its worker data. A thread answers one message, a
 * batch of rows, with one message, its result, in the order in which the batches came.
 * @param count threads, 1 or more
 */
export function startPool(script: URL, task: Task, count: number): Pool {
  const threads = Array.from({ length: count }, () => startThread(script, task));
  return {
    run(rows) {
      const idlest = threads.reduce((a, b) => (b.pending.length < a.pending.length ? b : a));
      return new Promise((resolve, reject) => {
        idlest.pending.push({ resolve, reject });
        idlest.worker.postMessage(rows);
      });
    },
    async close() {
      await Promise.all(threads.map(({ worker }) => worker.terminate()));
    },
  };
}

/**
 * A thread keeps nothing between batches; without these it would let its heap grow before it clears up. The young generation is as
 * large as that of the main thread, for in a smaller one it is cleared up oftener.
 */
const HEAP = { maxYoungGenerationSizeMb: 48, maxOldGenerationSizeMb: 128 };

function startThread(script: URL, task: Task) {
  const worker = new Worker(script, { workerData: task, resourceLimits: HEAP });
  const pending: Pending[] = [];
  worker.on('message', (result: BatchResult) => pending.shift()?.resolve(result));
  worker.on('error', (error) => {
    for (const { reject } of pending.splice(0)) reject(error);
  });
  return { worker, pending };
}
