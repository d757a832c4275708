// Checks job documents without computing their fit.
import { runBundle } from './runBundle.mjs';

await runBundle('validate', 'src/cli/validate.ts');
