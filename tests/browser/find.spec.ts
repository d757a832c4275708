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

/** Every result of the page as it was in one column, the presses that lead to it from the cover, and what shows it. */
const RESULTS: readonly (readonly [result: string, presses: readonly Press[], shows: string])[] = [
  ['verdict in one sentence', [], '.verdict .headline'],
  ['cover in 3D or its section', [], '.stage-view'],
  ['making of the cover, step by step', [], '.stage-controls input >> nth=0'],
  ['opening of the cover', [], '.stage-controls input >> nth=1'],
  ['checks', [card('checks')], '.check'],
  ['what makes each edge unsure', [card('sure'), fold('Fore-edges, both together')], '.how-sure details[open] table'],
  ['what the ease pays for', [card('sure'), fold('What the ease pays for')], '.how-sure details[open] caption'],
  ['what to measure next', [card('sure')], '.measure-next li'],
  ['cut sizes', [card('cut')], '.pieces tbody tr'],
  ['sum of a cut size', [card('cut'), fold('Outside, width')], '.sum[open] tfoot'],
  ['wrap laid out, with the gaps', [place('Strips')], '.strip .strip-drawing'],
  ['head to tail laid out', [place('Strips')], '.upright svg'],
  ['flat pattern', [place('Strips')], '.strips-place .flat-pattern'],
  ['curve of a result', [place('Explore')], '.explore-plot svg'],
  ['curve in figures', [place('Explore'), fold('The same in figures')], '.explore-table[open] table'],
  ['what must change', [place('Explore')], '.must-change'],
  ['covers that fit, by trials', [place('Explore')], '.trials .chance'],
  ['pattern with holes and fittings', [place('Workbench'), part('Construction')], '.panel-outcome .flat-pattern'],
  ['template', [place('Workbench'), part('Template')], '.panel-outcome .flat-pattern'],
  ['template as PDF', [place('Workbench'), part('Template')], 'text=Save the template as PDF'],
  ['drafting sheet', [place('Workbench'), part('Drafting sheet')], '.draft-steps'],
  ['drafting sheet as PDF', [place('Workbench'), part('Drafting sheet')], 'text=Save the drafting sheet as PDF'],
  ['file for a cutter, SVG', [place('Workbench'), part('Template')], 'text=Save as SVG'],
  ['file for a cutter, DXF', [place('Workbench'), part('Template')], 'text=Save as DXF'],
  ['what the card trial shows', [place('Workbench'), part('Card trial')], '.lesson'],
  ['layout on the leather owned', [place('Workbench'), part('Leather owned')], '.laid'],
  ['supplies', [place('Workbench'), part('Supplies')], '.panel-outcome .sheet-items'],
  ['lace or thread, in all', [place('Workbench'), part('Supplies')], '.panel-outcome'],
  ['quote', [place('Workbench'), part('Quote')], '.quote tfoot'],
  ['order of work', [place('Workbench'), part('Order of work')], '.panel-outcome li'],
  ['bench sheet as PDF', [place('Workbench'), part('Order of work')], 'text=Save the bench sheet as PDF'],
  ['customer sheet', [place('Customer')], '.customer-fit'],
  ['customer sheet as PDF', [place('Customer')], 'text=Save as PDF'],
  ['picture of the cover as a file', [button('Take away')], 'dialog >> text=Save picture'],
  ['3D model (GLB)', [button('Take away')], 'dialog >> text=Save model'],
  ['measuring sheet', [place('Customer')], 'text=Save a measuring sheet'],
  ['job as a file', [button(/^Job: /)], '.job-menu >> text=Save file'],
  ['link that holds the job', [button(/^Job: /), button('Share link')], '.share-note'],
  [
    'kept jobs',
    [button(/^Job: /), (page) => page.locator('.job-menu').getByRole('link', { name: 'Shelf' }).first()],
    '.shelf-place',
  ],
];

test('every result is reached from the cover in at most three presses', async ({ bench }) => {
  test.slow();
  const table: string[] = [];
  for (const [result, presses, shows] of RESULTS)
    await test.step(result, async () => {
      await bench.goto('');
      await expect(bench.locator('.verdict .headline')).toBeVisible();
      for (const press of presses) await press(bench).click();
      const shown = bench.locator(shows).first();
      await expect(shown).toBeVisible();
      table.push(`${String(presses.length).padStart(2)}  ${result}`);
      expect(presses.length).toBeLessThanOrEqual(3);
    });
  expect(table.length).toBe(RESULTS.length);
  console.log(`Presses from the cover\n${table.join('\n')}`);
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
