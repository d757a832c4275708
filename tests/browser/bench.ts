import { type Browser, test as base, expect, type Page } from '@playwright/test';

/** Chooses how the scene is drawn where no choice is kept yet. */
const chooseLook = (choice: string): void => {
  if (localStorage.getItem('coverwright.view.v1') === null)
    localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: choice }));
};

/** A page that fails its test on any console error, uncaught error or request that leaves the origin. */
export const test = base.extend<{ look: 'full' | 'light'; bench: Page }>({
  // The plain look of the scene draws eight times as fast without a graphics card.
  look: ['light', { option: true }],
  bench: async ({ page, baseURL, look }, use) => {
    await page.addInitScript(chooseLook, look);
    const faults: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(baseURL!) && !/^(blob|data):/.test(url)) faults.push(`request: ${url}`);
    });
    await page.goto('');
    await use(page);
    expect(faults).toEqual([]);
  },
});

export { expect };

export const headline = (page: Page) => page.locator('.headline');

export const openExample = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** A page in another browser, where nothing is kept yet. */
export async function elsewherePage(browser: Browser, baseURL: string | undefined): Promise<Page> {
  const page = await browser.newPage({ baseURL, serviceWorkers: 'block' });
  await page.addInitScript(chooseLook, 'light');
  return page;
}
