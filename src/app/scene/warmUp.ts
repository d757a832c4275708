import { keepPixels } from '../../artwork/tiles/tilePixels.ts';
import { TILES, type TileName } from '../../artwork/tiles/tiles.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import type { WarmUpAnswer, WarmUpQuestion } from './warmUp.worker.ts';

/** Pixels of known tiles, each of its tile's size. */
const isWarmUpAnswer = (answer: unknown): answer is WarmUpAnswer =>
  Array.isArray(answer) && answer.every((tile) => Array.isArray(tile) && isTile(tile[0], tile[1]));

const isTile = (name: unknown, pixels: unknown): boolean =>
  typeof name === 'string' &&
  name in TILES &&
  pixels instanceof Uint8Array &&
  pixels.length === 4 * TILES[name as TileName].size ** 2;

/** Makes the scene's textures and starts the graphics driver in a worker, which would otherwise block the page. */
export async function warmUp(look: WarmUpQuestion): Promise<void> {
  const queue = new WorkerQueue<WarmUpQuestion, WarmUpAnswer>(
    () => new Worker(new URL('./warmUp.worker.ts', import.meta.url), { type: 'module' }),
    isWarmUpAnswer,
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
