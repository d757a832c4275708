import { type Browser, test as base, expect, type Locator, type Page } from '@playwright/test';
import { withoutPixels, withoutWebGl } from './webGl.ts';

/** Chooses how the scene is drawn where no choice is kept yet. */
export const chooseLook = (choice: string): void => {
  if (localStorage.getItem('coverwright.view.v1') === null)
    localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: choice }));
};

/** SLOW=4 gives every page a processor four times slower than it is. */
const SLOW = Number(process.env.SLOW ?? 1);

/** Slows the processor for a page and whatever it loads. A page that is closed meanwhile needs no slowing. */
async function slowDown(page: Page): Promise<void> {
  if (SLOW <= 1) return;
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
}

/** `bench` is a page that fails its test on any console error, uncaught error or request that leaves the origin. */
export const test = base.extend<{ look: 'full' | 'light' | 'unfilled' | 'section'; bench: Page }>({
  context: async ({ context }, use) => {
    context.on('page', (page) => slowDown(page).catch(() => {}));
    await use(context);
  },
  // `section` draws no scene, for most tests have none to look at. Without a graphics card the plain look, `light`, starts
  // in a quarter of the time of the full one; `unfilled` is the plain look where the scene is worked but not looked at.
  look: ['section', { option: true }],
  bench: async ({ page, baseURL, look }, use) => {
    // For the other windows of a test too.
    if (look === 'section') await page.context().addInitScript(withoutWebGl);
    else await page.context().addInitScript(chooseLook, look === 'full' ? 'full' : 'light');
    if (look === 'unfilled') await page.context().addInitScript(withoutPixels);
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

/** The name of the open job. */
export const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job', exact: true });

/** Opens an example and waits until it stands on the bench. */
export async function openExample(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click();
  await expect(jobName(page)).toHaveValue(new RegExp(`^${name}$`, 'i'));
}

/** Waits until the strip, which a worker solves, has spoken for the open job. */
export async function stripSettles(page: Page): Promise<void> {
  await expect(page.locator('.check[aria-busy="false"]', { hasText: 'Staying shut' })).toBeVisible();
}

/** Waits until all that Explore's workers say of the open job is there. */
export async function exploreSettles(page: Page): Promise<void> {
  await expect(page.locator('.explore-plot svg')).toBeVisible();
  await expect(page.locator('.explore .chance')).toBeVisible();
  await expect(page.locator('.explore [aria-busy="true"]')).toHaveCount(0);
}

/** Waits until the scene, or both scenes, of a page are drawn. */
export async function scenesAreDrawn(page: Page, count = 1): Promise<void> {
  await expect(page.locator('.cover-scene[aria-busy="false"]')).toHaveCount(count);
}

/** The middle of something that may still be moving into its place, once it has stood still for a moment. */
export async function steadyMiddle(what: Locator): Promise<{ x: number; y: number }> {
  await what.scrollIntoViewIfNeeded();
  const middle = async () => {
    const { x, y, width, height } = (await what.boundingBox())!;
    return { x: x + width / 2, y: y + height / 2 };
  };
  let before = await middle();
  await expect(async () => {
    await what.page().waitForTimeout(100);
    const last = before;
    before = await middle();
    expect(before).toEqual(last);
  }).toPass();
  return before;
}

/** A slider's value. It follows the job, so a test waits for the value that it expects: `expect.poll(sliderValue(slider))`. */
export const sliderValue = (slider: Locator) => async (): Promise<number> =>
  Number(await slider.getAttribute('aria-valuenow'));

/** A page in another browser, where nothing is kept yet. */
export async function elsewherePage(browser: Browser, baseURL: string | undefined): Promise<Page> {
  const page = await browser.newPage({ baseURL, serviceWorkers: 'block' });
  await slowDown(page);
  await page.addInitScript(withoutWebGl);
  return page;
}
