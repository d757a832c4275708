import type { Browser } from '@playwright/test';
import { type EngineWindow, scriptOf } from './engineWindow.ts';

/** The browser of all other tests. */
export async function chromiumWindow(browser: Browser): Promise<EngineWindow> {
  const context = await browser.newContext({ serviceWorkers: 'allow' });
  let page = await context.newPage();
  return {
    name: `Chromium ${browser.version()}`,
    ask: (work, ...given) => page.evaluate(scriptOf(work, given)),
    goTo: async (address) => void (await page.goto(address)),
    resize: (width, height) => page.setViewportSize({ width, height }),
    async point(steps) {
      for (const [kind, x = 0, y = 0] of steps) await (kind === 'move' ? page.mouse.move(x, y) : page.mouse[kind]());
    },
    async keys(keys, held) {
      if (held !== undefined) await page.keyboard.down(held);
      for (const key of keys) await page.keyboard.press(key);
      if (held !== undefined) await page.keyboard.up(held);
    },
    async elsewhere(work) {
      const here = page;
      page = await context.newPage();
      try {
        await work();
      } finally {
        await page.close();
        page = here;
      }
    },
    close: () => context.close(),
  };
}
