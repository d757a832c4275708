import { tilePixels } from '../../artwork/tiles/tilePixels.ts';
import { type TileName, tilesOf } from '../../artwork/tiles/tiles.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

/** The look that the scene starts with. */
export type WarmUpQuestion = 'full' | 'light';

/** Pixels of the tiles of that look. */
export type WarmUpAnswer = readonly (readonly [TileName, Uint8Array])[];

serveQuestions<WarmUpQuestion, WarmUpAnswer>(
  (look) => {
    // The first drawing context starts the graphics driver; the thread that asks for it is blocked meanwhile.
    if ('OffscreenCanvas' in self) new OffscreenCanvas(1, 1).getContext('webgl2');
    return tilesOf(look).map(([name, tile]) => [name, tilePixels(tile)]);
  },
  (answer) => answer.map(([, pixels]) => pixels.buffer),
);
