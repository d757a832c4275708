// Computes many jobs in one run.
import { runBundle } from './runBundle.mjs';

await runBundle('catalogue', 'src/cli/catalogue.ts');
