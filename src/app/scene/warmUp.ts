import { keepPixels } from '../../artwork/tiles/tilePixels.ts';
import { TILES } from '../../artwork/tiles/tiles.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { WarmUpAnswer, WarmUpQuestion } from './warmUp.worker.ts';

/** Makes the scene's textures and starts the graphics driver in a worker, which would otherwise block the page. */
export async function warmUp(look: WarmUpQuestion): Promise<void> {
  const queue = new WorkerQueue<WarmUpQuestion, WarmUpAnswer>(
    () => new Worker(new URL('./warmUp.worker.ts', import.meta.url), { type: 'module' }),
    { restarts: 0 },
  );
  try {
    for (const [name, pixels] of await queue.ask(look)) keepPixels(TILES[name], pixels);
  } catch {
    // The scene then draws its tiles itself.
  } finally {
    queue.close();
  }
}
