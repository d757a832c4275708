import * as z from 'zod/mini';
import type { Step } from './jobHistory.ts';

/** Bump the version when the shape below changes: an older one is then left alone and not read. */
const KEY = 'coverwright.open-job.v1';

const keptSchema = z.object({
  document: z.looseObject({}),
  typed: z.record(z.string(), z.object({ text: z.string(), unit: z.enum(['mm', 'in']) })),
});

/** The job that was open when the page was left, or null where nothing readable was kept. */
export function keptJob(): Step | null {
  try {
    return keptSchema.parse(JSON.parse(localStorage.getItem(KEY) ?? ''));
  } catch {
    return null;
  }
}

/** Keeps the open job in this browser. Returns false where the browser refuses, as in a private window or when full. */
export function keepJob({ document, typed }: Step): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify({ document, typed }));
    return true;
  } catch {
    return false;
  }
}
