import { defined } from '../defined.ts';
import { isWholeProof } from '../proof/proofSize.ts';
import { chromiumWindow } from './engine/chromiumWindow.ts';
import type { EngineWindow } from './engine/engineWindow.ts';
import { firefoxSession } from './engine/firefoxSession.ts';
import { Hand } from './engine/Hand.ts';
import { MAIN_PATH, type Walk } from './engine/mainPath.ts';
import { programPath } from './engine/program.ts';
import { webDriverWindow } from './engine/webDriverWindow.ts';
import { webKitSession } from './engine/webKitSession.ts';
import { expect, test } from './site.ts';

/** Of each engine, by its name, what was wrong at each step; null where it passed. */
const endings = new Map<string, readonly (string | null)[]>();

/** Takes every step, also after one that failed; after three the rest would only wait. */
async function walkMainPath(window: EngineWindow, site: Walk['site']): Promise<void> {
  const walk: Walk = { hand: new Hand(window), site, file: '', link: '' };
  const ended: (string | null)[] = [];
  const start = Date.now();
  try {
    for (const [name, take] of MAIN_PATH) {
      if (ended.filter((each) => each !== null).length < 3)
        ended.push(
          await take(walk).then(
            () => null,
            ({ message }: Error) => `${name}: ${message}`,
          ),
        );
      else ended.push(`${name}: not tried`);
    }
  } finally {
    await window.close();
  }
  endings.set(window.name, ended);
  const failed = ended.filter((each) => each !== null);
  const seconds = Math.round((Date.now() - start) / 1000);
  console.log(`${window.name}: ${ended.length - failed.length} of ${ended.length} steps passed, ${seconds} s`);
  expect(failed).toEqual([]);
}

// Whole, one after the other, for a table of all.
test.describe.configure({ mode: isWholeProof ? 'default' : 'parallel', timeout: 600_000 });

if (isWholeProof) {
  test.afterAll(() => {
    const names = [...endings.keys()];
    const rows = MAIN_PATH.map(([step], i) => {
      const cells = names.map((name) => (defined(endings.get(name))[i] === null ? 'passed' : 'FAILED'));
      return [...cells.map((cell, at) => cell.padEnd(defined(names[at]).length)), `${i + 1} ${step}`].join('  ');
    });
    console.log([[...names, 'step'].join('  '), ...rows].join('\n'));
  });

  // The other tests have all of this in Chromium.
  test('the main path goes from end to end in Chromium', async ({ browser, site }) => {
    await walkMainPath(await chromiumWindow(browser), site);
  });
}

for (const [engine, program, packages, start] of [
  ['Firefox', 'firefox-esr', 'firefox-esr xvfb', firefoxSession],
  ['WebKit', 'WebKitWebDriver', 'webkit2gtk-driver xvfb', webKitSession],
] as const)
  test(`the main path goes from end to end in ${engine}`, async ({ site }) => {
    const [path, screen] = [programPath(program), programPath('Xvfb')];
    test.skip(
      path === undefined || screen === undefined,
      `${engine} is not here; on Debian: apt-get install ${packages}`,
    );
    await walkMainPath(webDriverWindow(await start(defined(path))), site);
  });
