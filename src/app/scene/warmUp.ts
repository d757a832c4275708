import { keepPixels } from './material/tilePixels.ts';
import { TILES } from './material/tiles.ts';
import type { WarmUpAnswer, WarmUpQuestion } from './warmUpMessage.ts';

/** Does in a worker what would stop the page while the scene starts. Where it cannot, the scene does it by itself. */
export const warmUp = (look: WarmUpQuestion): Promise<void> =>
  new Promise((resolve) => {
    const worker = new Worker(new URL('./warmUp.worker.ts', import.meta.url), { type: 'module' });
    const end = (): void => {
      worker.terminate();
      resolve();
    };
    worker.onmessage = ({ data }: MessageEvent<WarmUpAnswer>) => {
      for (const [name, pixels] of data) keepPixels(TILES[name], pixels);
      end();
    };
    worker.onerror = end;
    worker.postMessage(look);
  });
