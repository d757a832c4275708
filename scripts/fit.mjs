// Computes how a cover fits its book.
import { runBundle } from './runBundle.mjs';

await runBundle('fit', 'src/cli/fit.ts');
