import { type Browser, test as base, expect, type Locator, type Page } from '@playwright/test';
import { withoutPixels, withoutWebGl } from './webGl.ts';

/** Chooses how the scene is drawn where no choice is kept yet. */
export const chooseLook = (choice: string): void => {
  if (localStorage.getItem('coverwright.view.v1') === null)
    localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: choice }));
};

const leaveOpenJob = (kept: string): void => {
  if (localStorage.getItem('coverwright.open-job.v1') === null) localStorage.setItem('coverwright.open-job.v1', kept);
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
export const test = base.extend<{ look: 'full' | 'light' | 'unfilled' | 'section'; kept: string | null; bench: Page }>({
  context: async ({ context }, use) => {
    context.on('page', (page) => slowDown(page).catch(() => {}));
    await use(context);
  },
  // `section` draws no scene, for most tests have none to look at. Without a graphics card the plain look, `light`, starts
  // in a quarter of the time of the full one; `unfilled` is the plain look where the scene is worked but not looked at.
  look: ['section', { option: true }],
  // The open job, as an earlier visit left it in the storage of the browser.
  kept: [null, { option: true }],
  bench: async ({ page, baseURL, look, kept }, use) => {
    // For the other windows of a test too.
    if (look === 'section') await page.context().addInitScript(withoutWebGl);
    else await page.context().addInitScript(chooseLook, look === 'full' ? 'full' : 'light');
    if (look === 'unfilled') await page.context().addInitScript(withoutPixels);
    if (kept !== null) await page.context().addInitScript(leaveOpenJob, kept);
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
    // Only the first words are there before.
    await expect(jobName(page)).toBeEnabled();
    await use(page);
    expect(faults).toEqual([]);
  },
});

export { expect };

/** The verdict in words: on the cover, and in a bar on every other place. */
export const headline = (page: Page) => page.locator('.headline').filter({ visible: true });

/** The button that carries the name of the open job and opens its menu. */
export const jobName = (page: Page) => page.locator('.job-name');

/** Opens the menu of the job, unless it is open. */
export async function openJobMenu(page: Page): Promise<Locator> {
  const menu = page.locator('.job-menu');
  // It cannot be pressed while only the first words are there.
  await expect(jobName(page)).toBeEnabled();
  if (!(await menu.isVisible())) await jobName(page).click();
  await expect(menu).toBeVisible();
  return menu;
}

/** Presses an entry of the menu of the job. */
export async function chooseInMenu(page: Page, entry: string): Promise<void> {
  const menu = await openJobMenu(page);
  await menu.getByRole('button', { name: entry, exact: true }).click();
}

/** Sets one of the selects of the menu. */
async function setDisplay(page: Page, label: string, value: string): Promise<void> {
  const menu = await openJobMenu(page);
  await menu.getByLabel(label, { exact: true }).selectOption(value);
  await page.keyboard.press('Escape');
  await expect(menu).toBeHidden();
}

export const setUnits = (page: Page, units: 'mm' | 'in'): Promise<void> => setDisplay(page, 'Units', units);

export async function renameJob(page: Page, name: string): Promise<void> {
  const menu = await openJobMenu(page);
  await menu.getByRole('textbox', { name: 'Job', exact: true }).fill(name);
  await page.keyboard.press('Escape');
  await expect(menu).toBeHidden();
}

/** The places of the page; the last one has no header, only a way back to the cover. */
export const PLACES = [
  'Cover',
  'Strips',
  'Explore',
  'Workbench',
  'Shelf',
  'Leathers',
  'By photograph',
  'Customer',
] as const;

/** Goes to a place of the page: by the row of the header, or by the menu where the row has no room for it. */
export async function goToPlace(page: Page, place: (typeof PLACES)[number]): Promise<void> {
  // It cannot be pressed while only the first words are there.
  await expect(jobName(page)).toBeEnabled();
  const inRow = page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place, exact: true });
  if (await inRow.isVisible()) await inRow.click();
  else await (await openJobMenu(page)).getByRole('link', { name: place, exact: true }).first().click();
  await expect(page).toHaveURL(new RegExp(`#${place.toLowerCase().replace('by ', '')}$`));
}

/** The parts of the workbench. */
export const PARTS = [
  'Construction',
  'Tooling',
  'Template',
  'Machines',
  'Drafting sheet',
  'Card trial',
  'Leather owned',
  'Supplies',
  'Quote',
  'Order of work',
  'How it came out',
] as const;

/** Goes to a part of the workbench, and gives the panel that shows it. */
export async function openPart(page: Page, part: (typeof PARTS)[number]): Promise<Locator> {
  if (!new URL(page.url()).hash.startsWith('#workbench')) await goToPlace(page, 'Workbench');
  const link = page
    .getByRole('navigation', { name: 'Parts of the workbench' })
    .getByRole('link', { name: part, exact: true });
  await link.click();
  await expect(link).toHaveAttribute('aria-current', 'page');
  return page.locator('.workbench-panel');
}

/** Goes back to the cover from wherever the page is, and unfolds one of its cards. */
export async function openCard(
  page: Page,
  id: 'book' | 'leather' | 'seam' | 'cut' | 'checks' | 'sure',
): Promise<Locator> {
  const card = page.locator(`#card-${id}`);
  await expect(card).toBeAttached();
  if (!(await card.isVisible())) await goToPlace(page, 'Cover');
  if ((await card.getAttribute('open')) === null) await card.locator('> summary').click();
  await expect(card).toHaveAttribute('open');
  return card;
}

/** Opens an example, from wherever the page is, and waits until it is the open job. */
export async function openExample(page: Page, name: string): Promise<void> {
  await chooseInMenu(page, 'New cover');
  await page.getByRole('dialog').getByRole('button', { name, exact: true }).click();
  await expect(jobName(page)).toHaveText(new RegExp(`^${name}$`, 'i'));
}

/** Opens a job from a file, from wherever the header is, and waits until it is the open one. */
export async function openDocument(page: Page, document: { readonly name: string }): Promise<void> {
  const buffer = Buffer.from(JSON.stringify(document));
  await page.getByLabel('Job file').setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer });
  await expect(jobName(page)).toHaveText(document.name);
}

/** Waits until the strip, which a worker solves, is known for the open job. */
export async function stripSettles(page: Page): Promise<void> {
  await expect(page.locator('section[data-strip="solved"]')).toBeAttached();
}

/** Waits, in the place Explore, until all that its workers have to say about the open job is there. */
export async function exploreSettles(page: Page): Promise<void> {
  await expect(page.locator('.explore-plot svg')).toBeVisible();
  await expect(page.locator('.explore .chance')).toBeVisible();
  await expect(page.locator('.explore [aria-busy="true"]')).toHaveCount(0);
}

/** From the next loading on, the workers of a page hear their questions only once the function that this gives is called. */
export async function holdWorkers(page: Page): Promise<() => Promise<void>> {
  await page.addInitScript(() => {
    const own = window.Worker;
    const isLet = new Promise<void>((resolve) => {
      window.addEventListener('let', () => resolve(), { once: true });
    });
    window.Worker = class extends own {
      override postMessage(message: unknown): void {
        void isLet.then(() => super.postMessage(message));
      }
    };
  });
  return async () => {
    await page.evaluate(() => window.dispatchEvent(new Event('let')));
  };
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
