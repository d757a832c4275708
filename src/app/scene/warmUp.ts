import { WorkerQueue } from '../worker/WorkerQueue.ts';
import { keepPixels } from './material/tilePixels.ts';
import { TILES, type TileName } from './material/tiles.ts';

/** The look that the scene starts with. */
export type WarmUpQuestion = 'full' | 'light';

/** Pixels of the tiles of that look. */
export type WarmUpAnswer = readonly (readonly [TileName, Uint8Array])[];

/** Makes the scene's textures and starts the graphics driver in a worker, which would otherwise block the page. */
export async function warmUp(look: WarmUpQuestion): Promise<void> {
  const queue = new WorkerQueue<WarmUpQuestion, WarmUpAnswer>(
    () => new Worker(new URL('./warmUp.worker.ts', import.meta.url), { type: 'module' }),
    { restarts: 0 },
  );
  try {
    for (const [name, pixels] of await queue.ask(look)) keepPixels(TILES[name], pixels);
  } catch {
    // The scene then makes its tiles itself.
  } finally {
    queue.close();
  }
}
