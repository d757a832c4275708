import type { Job } from '../../core/job/jobSchema.ts';
import type { GlbAnswer, GlbQuestion } from './glbMessage.ts';

/**
 * Makes the 3D model of a cover in a worker of its own, for it takes about a second.
 * @throws Error where it could not be made
 */
export function makeGlb(job: Job): Promise<Uint8Array<ArrayBuffer>> {
  const worker = new Worker(new URL('./glb.worker.ts', import.meta.url), { type: 'module' });
  const made = new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<GlbAnswer>) => {
      if ('bytes' in data) resolve(data.bytes);
      else reject(new Error(data.failure));
    };
    worker.onerror = ({ message }) => reject(new Error(message || 'The part that makes it could not be fetched.'));
  });
  worker.postMessage({ job } satisfies GlbQuestion);
  return made.finally(() => worker.terminate());
}
