import * as z from 'zod/mini';
import { type PictureUse, type ReadArtwork, sizeIssue } from '../../artwork/readArtwork.ts';
import { AskedWorker } from './AskedWorker.ts';
import { accepting } from './accepting.ts';
import type { ArtworkQuestion } from './artwork.worker.ts';

/** What the worker that reads a file may answer. That the drawing is sound is checked where it comes into the job. */
export const isReadArtwork = accepting<ReadArtwork>(
  z.union([
    z.looseObject({
      ok: z.literal(true),
      artwork: z.looseObject({
        id: z.string(),
        kind: z.enum(['lines', 'picture']),
        width: z.number(),
        height: z.number(),
      }),
      width_mm: z.nullable(z.number()),
      leftOut: z.array(z.string()),
    }),
    z.looseObject({ ok: z.literal(false), issue: z.looseObject({ message: z.string() }) }),
  ]),
);

export const startArtworkWorker = (): Worker =>
  new Worker(new URL('./artwork.worker.ts', import.meta.url), { type: 'module' });

/**
 * Reads a file that the maker chose, in a worker of its own: whatever is in it holds up nothing else and is gone with the worker.
 *
 * @throws WorkerGaveUp where the worker does not start or takes too long
 */
export async function openArtwork(file: File, use: PictureUse): Promise<ReadArtwork> {
  const issue = sizeIssue(file.size);
  if (issue !== null) return { ok: false, issue };
  const worker = new AskedWorker<ArtworkQuestion, ReadArtwork>(startArtworkWorker, isReadArtwork);
  try {
    return await worker.ask({ file: { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }, use });
  } finally {
    worker.close();
  }
}
