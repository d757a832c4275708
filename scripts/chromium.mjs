// Finds a Chromium or installs one. CHROMIUM_PATH names the browser to use instead of looking for one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const PLAYWRIGHT = 'node_modules/@playwright/test/cli.js';

const FOLDERS = [...(process.env.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin', '/snap/bin'];
/** @type {(name: string) => string | undefined} */
const find = (name) => FOLDERS.map((folder) => join(folder, name)).find((path) => existsSync(path));

/**
 * Runs a command in the open; gives its exit code, 1 when it could not start.
 * @type {(command: string, args: string[], env?: Record<string, string>) => number}
 */
export function run(command, args, env = {}) {
  const { status, error } = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } });
  if (error) console.error(`${command}: ${error.message}`);
  return status ?? 1;
}

/**
 * A file is not enough: on some systems the name belongs to a stub that only says how to install the browser.
 * @type {(path: string) => boolean}
 */
const starts = (path) => spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 60_000 }).status === 0;

function findChromium() {
  return ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']
    .map(find)
    .find((path) => path !== undefined && starts(path));
}

function installFromDebian() {
  const aptGet = find('apt-get');
  if (aptGet === undefined || process.getuid?.() !== 0) return undefined;
  console.log('No Chromium found; installing the Debian packages chromium and fonts-liberation.');
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  run(aptGet, ['update'], quiet);
  run(aptGet, ['install', '-y', '--no-install-recommends', 'chromium', 'fonts-liberation'], quiet);
  return findChromium();
}

/** Gives the environment in which the browser is found: CHROMIUM_PATH, or nothing where the test tool finds its own. */
export function chooseBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!existsSync(named) || !starts(named)) {
      console.error(
        `CHROMIUM_PATH: got “${named}”, which does not start; allowed: a Chromium program. Unset it to search.`,
      );
      process.exit(2);
    }
    console.log(`Browser: ${named} (CHROMIUM_PATH)`);
    return {};
  }
  const path = findChromium() ?? installFromDebian();
  if (path !== undefined) {
    console.log(`Browser: ${path}`);
    return { CHROMIUM_PATH: path };
  }
  console.log(
    "No Chromium found; installing the test tool's own, which also needs its system libraries to be present.",
  );
  const status = run(process.execPath, [PLAYWRIGHT, 'install', 'chromium']);
  if (status !== 0) {
    console.error('No browser could be installed. Install Chromium, or set CHROMIUM_PATH to one, and run this again.');
    process.exit(status);
  }
  return {};
}
