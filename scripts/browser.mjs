// Finds a browser (see chromium.mjs), builds the app and runs the browser tests; arguments go to `playwright test`.
import { join } from 'node:path';
import { chooseBrowser, run } from './chromium.mjs';
import { step } from './steps.mjs';

const VITE = 'node_modules/vite/bin/vite.js';
const PLAYWRIGHT = 'node_modules/@playwright/test/cli.js';

process.chdir(join(import.meta.dirname, '..'));

let browser;
step('find a browser', () => {
  browser = chooseBrowser();
});
step('build', () => run(process.execPath, [VITE, 'build', '--logLevel', 'warn']));
step('browser', () => run(process.execPath, [PLAYWRIGHT, 'test', ...process.argv.slice(2)], browser));
