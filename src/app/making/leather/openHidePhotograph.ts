import * as z from 'zod/mini';
import { AskedWorker } from '../../worker/AskedWorker.ts';
import { accepting, bytesShape } from '../../worker/accepting.ts';
import type { HidePhotograph, HidePhotographQuestion } from './hidePhotograph.worker.ts';

const isHidePhotograph = accepting<HidePhotograph>(
  z.nullable(
    z.looseObject({
      bytes: bytesShape,
      width: z.number(),
      height: z.number(),
      mm: z.number(),
      u: z.number(),
      uPrint: z.number(),
      pages: z.array(z.string()),
      seen: z.nullable(
        z.looseObject({ outline: z.array(z.array(z.number())), defects: z.array(z.array(z.array(z.number()))) }),
      ),
    }),
  ),
);

/**
 * Looks for pages of the sheet for photographs in a picture of a hide, and lays it flat by them.
 *
 * @returns null where there is no sheet in it, or nothing can be told by it
 * @throws WorkerGaveUp, or Error in words for the maker where the picture cannot be opened
 */
export async function openHidePhotograph(question: HidePhotographQuestion): Promise<HidePhotograph> {
  const worker = new AskedWorker<HidePhotographQuestion, HidePhotograph>(
    () => new Worker(new URL('./hidePhotograph.worker.ts', import.meta.url), { type: 'module' }),
    isHidePhotograph,
  );
  try {
    return await worker.ask(question);
  } finally {
    worker.close();
  }
}
