import type { Locator, Page } from '@playwright/test';
import { expectAccessible } from './accessibility.ts';
import { expect, test } from './bench.ts';

const field = (page: Page) => page.getByRole('combobox', { name: 'What are you looking for?' });
const options = (page: Page) => page.getByRole('listbox', { name: 'Found' }).getByRole('option');

async function find(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await field(page).fill(text);
  await field(page).press('Enter');
}

test('the search is worked by keys alone: / opens, arrows move, Enter goes, Escape gives the focus back', async ({
  bench,
}) => {
  const strips = bench.getByRole('link', { name: 'Strips', exact: true });
  await strips.focus();
  await bench.keyboard.press('/');
  await expect(field(bench)).toBeFocused();
  await expect(options(bench).first()).toHaveText(/^Cover/);
  await expect(options(bench).first()).toHaveAttribute('aria-selected', 'true');
  await bench.keyboard.press('Escape');
  await expect(field(bench)).toBeHidden();
  await expect(strips).toBeFocused();

  await bench.keyboard.press('/');
  await field(bench).pressSequentially('edge m');
  await expect(bench.getByRole('status').filter({ hasText: /^\d+ found/ })).toBeVisible();
  await bench.keyboard.press('ArrowDown');
  const second = options(bench).nth(1);
  await expect(second).toHaveAttribute('aria-selected', 'true');
  await expect(field(bench)).toHaveAttribute('aria-activedescendant', (await second.getAttribute('id')) ?? '');
  await bench.keyboard.press('ArrowUp');
  await bench.keyboard.press('Enter');
  const margin = bench.getByRole('textbox', { name: 'Edge margin', exact: true });
  await expect(margin).toBeFocused();
  await expect(margin).toHaveAttribute('data-found');
  await margin.blur();
  await expect(margin).not.toHaveAttribute('data-found');

  // Typed into a field, the sign is a sign.
  await bench.getByRole('textbox', { name: 'Edge margin', exact: true }).fill('');
  await bench.keyboard.press('/');
  await expect(field(bench)).toBeHidden();
});

test('fields, checks, sums, files and settings are gone to by their names, or by what they are never called', async ({
  bench,
}) => {
  const steps: readonly (readonly [typed: string, there: (page: Page) => Locator])[] = [
    ['pocket depth', (page) => page.getByRole('textbox', { name: 'Pocket depth', exact: true })],
    ['page give', (page) => page.getByRole('textbox', { name: 'Squash of the pages', exact: true })],
    ['check: closing', (page) => page.locator('.check h3', { hasText: 'Closing' })],
    ['outside, width', (page) => page.locator('summary', { hasText: 'Outside, width' })],
    ['what the ease pays for', (page) => page.locator('summary', { hasText: 'What the ease pays for' })],
    ['dxf', (page) => page.getByRole('button', { name: 'Save as DXF' })],
    ['currency', (page) => page.getByLabel('Currency sign', { exact: true })],
    ['units', (page) => page.getByLabel('Units', { exact: true })],
    ['curve: head gap', (page) => page.locator('.explore [data-pick="result"]')],
  ];
  for (const [typed, there] of steps)
    await test.step(typed, async () => {
      await find(bench, typed);
      await expect(there(bench)).toBeFocused();
      await expect(there(bench)).toHaveAttribute('data-found');
    });
});

test('what is pressed in the search is done: an example, undo, a new cover', async ({ bench }) => {
  const job = bench.getByRole('button', { name: /^Job: / });
  await find(bench, 'example shore');
  await expect(job).toHaveText('Shore guide');
  await find(bench, 'undo');
  await expect(job).toHaveText('Tide ledger');
  await find(bench, 'new cover');
  await expect(bench.getByRole('dialog', { name: /new cover/i })).toBeVisible();
  await bench.keyboard.press('Escape');
  await expect(bench.getByRole('dialog')).toBeHidden();
});

test('a field that this cover does not have leads to where it would be', async ({ bench }) => {
  await find(bench, 'lining density');
  await expect(bench.locator('#card-leather > summary')).toHaveAttribute('data-found');
});

type Press = (page: Page) => Locator;

const place =
  (name: string): Press =>
  (page) =>
    page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name, exact: true });
const part =
  (name: string): Press =>
  (page) =>
    page.getByRole('navigation', { name: 'Parts of the workbench' }).getByRole('link', { name, exact: true });
const card =
  (id: string): Press =>
  (page) =>
    page.locator(`#card-${id} > summary`);
const fold =
  (words: string | RegExp): Press =>
  (page) =>
    page.locator('summary', { hasText: words }).first();
const button =
  (name: string | RegExp): Press =>
  (page) =>
    page.getByRole('button', { name }).first();

/** Presses that lead from the cover to results of the page, each with what shows it: all results there are. */
const RESULTS: readonly (readonly [presses: readonly Press[], shown: Readonly<Record<string, string>>])[] = [
  [
    [],
    {
      'verdict in one sentence': '.verdict .headline',
      'cover in 3D or its section': '.stage-view',
      'making of the cover, step by step': '.stage-controls input >> nth=0',
      'opening of the cover': '.stage-controls input >> nth=1',
    },
  ],
  [[card('checks')], { checks: '.check' }],
  [
    [card('sure'), fold('Fore-edges, both together')],
    { 'what makes each edge unsure': '.how-sure details[open] table' },
  ],
  [
    [card('sure'), fold('What the ease pays for')],
    { 'what the ease pays for': '.how-sure details[open] caption', 'what to measure next': '.measure-next li' },
  ],
  [[card('cut'), fold('Outside, width')], { 'sum of a cut size': '.sum[open] tfoot', 'cut sizes': '.pieces tbody tr' }],
  [
    [place('Strips')],
    {
      'wrap laid out, with the gaps': '.strip .strip-drawing',
      'head to tail laid out': '.upright svg',
      'flat pattern': '.strips-place .flat-pattern',
    },
  ],
  [
    [place('Explore')],
    {
      'curve of a result': '.explore-plot svg',
      'what must change': '.must-change',
      'covers that fit, by trials': '.trials .chance',
    },
  ],
  [[place('Explore'), fold('The same in figures')], { 'curve in figures': '.explore-table[open] table' }],
  [[place('Workbench'), part('Construction')], { 'pattern with holes and fittings': '.panel-outcome .flat-pattern' }],
  [
    [place('Workbench'), part('Template')],
    {
      template: '.panel-outcome .flat-pattern',
      'template as PDF': 'text=Save the template as PDF',
      'file for a cutter, SVG': 'text=Save as SVG',
      'file for a cutter, DXF': 'text=Save as DXF',
    },
  ],
  [
    [place('Workbench'), part('Drafting sheet')],
    { 'drafting sheet': '.draft-steps', 'drafting sheet as PDF': 'text=Save the drafting sheet as PDF' },
  ],
  [[place('Workbench'), part('Card trial')], { 'what the card trial shows': '.lesson' }],
  [[place('Workbench'), part('Leather owned')], { 'layout on the leather owned': '.laid' }],
  [
    [place('Workbench'), part('Supplies')],
    { supplies: '.panel-outcome .sheet-items', 'lace or thread, in all': '.panel-outcome' },
  ],
  [[place('Workbench'), part('Quote')], { quote: '.quote tfoot' }],
  [
    [place('Workbench'), part('Order of work')],
    { 'order of work': '.panel-outcome li', 'bench sheet as PDF': 'text=Save the bench sheet as PDF' },
  ],
  [
    [place('Customer')],
    {
      'customer sheet': '.customer-fit',
      'customer sheet as PDF': 'text=Save as PDF',
      'measuring sheet': 'text=Save a measuring sheet',
    },
  ],
  [
    [button('Take away')],
    { 'picture of the cover as a file': 'dialog >> text=Save picture', '3D model (GLB)': 'dialog >> text=Save model' },
  ],
  [[button(/^Job: /)], { 'job as a file': '.job-menu >> text=Save file' }],
  [[button(/^Job: /), button('Share link')], { 'link that holds the job': '.share-note' }],
  [
    [button(/^Job: /), (page) => page.locator('.job-menu').getByRole('link', { name: 'Shelf' }).first()],
    { 'kept jobs': '.shelf-place' },
  ],
];

test('every result is reached from the cover in at most three presses', async ({ bench }) => {
  test.slow();
  for (const [presses, shown] of RESULTS) {
    expect(presses.length).toBeLessThanOrEqual(3);
    await bench.goto('');
    await expect(bench.locator('.verdict .headline')).toBeVisible();
    for (const press of presses) await press(bench).click();
    for (const [result, shows] of Object.entries(shown))
      await test.step(result, () => expect(bench.locator(shows).first()).toBeVisible());
  }
});

test('the search meets WCAG 2.2 AA', async ({ bench }) => {
  await bench.getByRole('button', { name: 'Find', exact: true }).click();
  await field(bench).fill('gap');
  await expect(options(bench).first()).toBeVisible();
  await expectAccessible(bench, '.find');
  await field(bench).fill('no such thing');
  await expect(bench.getByText('Nothing by that name.')).toBeVisible();
  await expectAccessible(bench, '.find');
});
