import { defineConfig } from '@playwright/test';
import { freePort } from './scripts/freePort.mjs';

// The environment hands it on to the test tool's own processes, each of which reads this file.
process.env.PORT ||= String(await freePort());
const { PORT } = process.env;
/** How many times slower than it is the processor is made for the page (see tests/browser/bench.ts). */
const SLOW = Number(process.env.SLOW ?? 1);
const CI = Boolean(process.env.CI);
const reports = process.env.TEST_REPORTS;

/** Run through `npm run browser`, which finds the browser (CHROMIUM_PATH) and builds what is served here. */
export default defineConfig({
  testDir: 'tests/browser',
  forbidOnly: CI,
  workers: 2,
  fullyParallel: true,
  // A machine without a graphics card draws with the processor that also runs the page: a wait is only ever too short
  // for it, and an expectation that is met ends the wait at once.
  timeout: 180_000 * SLOW,
  expect: { timeout: 45_000 * SLOW },
  reporter: reports ? [['list'], ['json', { outputFile: `${reports}/browser.json` }]] : 'list',
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    viewport: { width: 1280, height: 800 },
    // A trace takes the page a fifth of its time; a failed test is run again with `--trace on`.
    trace: 'off',
    // Every test would fetch the whole tool to keep it; the tests of that allow it for themselves.
    serviceWorkers: 'block',
    // No frames for moving from one view to the next; the tests of motion ask for it.
    contextOptions: { reducedMotion: 'reduce' },
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH || undefined,
      args: [
        '--no-sandbox',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // WebGL drawn by the processor, for machines without a graphics card; the page itself is painted without it, in
        // half the time.
        '--disable-gpu',
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
      ],
    },
  },
  webServer: {
    command: `node node_modules/vite/bin/vite.js preview --host 127.0.0.1 --port ${PORT} --strictPort`,
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
  },
});
