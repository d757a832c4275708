// Finds a browser (see chromium.mjs), builds the app and runs the browser tests; arguments go to `playwright test`.
import { join } from 'node:path';
import { chooseBrowser, run } from './chromium.mjs';

const VITE = 'node_modules/vite/bin/vite.js';
const PLAYWRIGHT = 'node_modules/@playwright/test/cli.js';

process.chdir(join(import.meta.dirname, '..'));

const browser = chooseBrowser();
const built = run(process.execPath, [VITE, 'build', '--logLevel', 'warn']);
process.exit(built || run(process.execPath, [PLAYWRIGHT, 'test', ...process.argv.slice(2)], browser));
