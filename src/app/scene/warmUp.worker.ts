import { tilePixels } from './material/tilePixels.ts';
import { tilesOf } from './material/tiles.ts';
import type { WarmUpAnswer, WarmUpQuestion } from './warmUpMessage.ts';

self.onmessage = ({ data: look }: MessageEvent<WarmUpQuestion>) => {
  // The first drawing context starts the graphics driver; whoever asks for it waits that long.
  if ('OffscreenCanvas' in self) new OffscreenCanvas(1, 1).getContext('webgl2');
  const answer: WarmUpAnswer = tilesOf(look).map(([name, tile]) => [name, tilePixels(tile)]);
  self.postMessage(answer, { transfer: answer.map(([, pixels]) => pixels.buffer) });
};
