import { serveQuestions } from '../worker/serveQuestions.ts';
import { tilePixels } from './material/tilePixels.ts';
import { tilesOf } from './material/tiles.ts';
import type { WarmUpAnswer, WarmUpQuestion } from './warmUp.ts';

serveQuestions<WarmUpQuestion, WarmUpAnswer>(
  (look) => {
    // The first drawing context starts the graphics driver; the thread that asks for it is blocked meanwhile.
    if ('OffscreenCanvas' in self) new OffscreenCanvas(1, 1).getContext('webgl2');
    return tilesOf(look).map(([name, tile]) => [name, tilePixels(tile)]);
  },
  (answer) => answer.map(([, pixels]) => pixels.buffer),
);
