import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { readDxf, readSvg } from '../output/cuttingFileReading.ts';
import { readPdf } from '../output/pdfReading.ts';
import { expect, openDocument, openPart, test } from './bench.ts';

const TIDE_LEDGER = JSON.parse(readFileSync('public/jobs/tide-ledger.json', 'utf8')) as object;

/** Initials and a double border on the front, a title down the spine. */
const TOOLED = {
  ...TIDE_LEDGER,
  name: 'Tooled ledger',
  tooling: {
    designs: [
      { kind: 'border', area: 'front', lines: 2 },
      { kind: 'title', area: 'front', text: 'H. B.', height_mm: 20 },
      { kind: 'title', area: 'spine', text: 'Tides', height_mm: 8, reading: 'down' },
    ],
  },
};

const PRICED = { ...TOOLED, rates: { prices: { hour: 30 } } };

async function saved(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test('a job that is tooled has tracings, on paper and as files, and its tooling on the pattern; no other job has', async ({
  bench,
}) => {
  await openDocument(bench, { ...TIDE_LEDGER, name: 'Plain ledger' });
  const panel = await openPart(bench, 'Template');
  await expect(panel.locator('[data-layer=cut]').first()).toBeVisible();
  await expect(panel.getByText(/tooling|tracing/i)).toHaveCount(0);

  await openDocument(bench, TOOLED);
  await expect(panel.locator('[data-layer=tooling] path').first()).toBeVisible();
  await expect(panel.locator('[data-layer=area] path').first()).toBeVisible();
  await panel.getByRole('radio', { name: 'left out', exact: true }).check();
  await expect(panel.locator('[data-layer=tooling]')).toHaveCount(0);
  await panel.getByRole('radio', { name: 'shown', exact: true }).check();

  // The areas go to a machine only when they are asked for, the tooling always.
  const layersOf = async () =>
    new Set(readSvg((await saved(bench, 'Save as SVG')).bytes.toString()).found.map(({ layer }) => layer));
  expect([...(await layersOf())]).toEqual(expect.arrayContaining(['CUT', 'TOOLING']));
  expect((await layersOf()).has('AREA')).toBe(false);
  await panel.getByLabel('tooling areas').check();
  await expect.poll(async () => (await layersOf()).has('AREA')).toBe(true);

  await panel.getByRole('radio', { name: 'tracings of the tooling' }).check();
  await expect(panel.getByRole('heading', { name: 'Tracings, drawn side up' })).toBeVisible();
  const { name, bytes } = await saved(bench, 'Save the tracings as PDF');
  expect(name).toBe('tooled-ledger-tracings-a4.pdf');
  const words = (await readPdf(new Uint8Array(bytes))).map((page) => page.words.map(({ text }) => text).join(' '));
  expect(words.join(' ')).toMatch(/Spine tracing.*Front tracing/);
  expect(words.join(' ')).not.toContain('not whole');

  await panel.getByRole('radio', { name: 'drawn side down, to transfer' }).check();
  await expect(panel.getByRole('heading', { name: 'Tracings, drawn side down' })).toBeVisible();
  const dxf = await saved(bench, 'Save as DXF');
  expect(dxf.name).toBe('tooled-ledger-tracings-mirrored.dxf');
  const { found } = readDxf(dxf.bytes.toString());
  const lines = found.filter(({ layer }) => layer === 'TOOLING');
  // Two borders, and more than one line for each letter and point of both titles.
  expect(lines.length).toBeGreaterThan(2 + 5);
  expect(found.filter(({ layer, radii }) => layer === 'MARK' && radii.length === 1)).toHaveLength(8);
});

test('tooling is timed by its lines, priced in the quote and listed on the bench sheet', async ({ bench }) => {
  await openDocument(bench, PRICED);
  const quote = await openPart(bench, 'Quote');
  const row = quote.getByRole('row').filter({ hasText: 'Tool the design' });
  await expect(row).toBeVisible();
  await expect(quote.getByText(/^About .* of line, on spine \(.* clear\), front \(.* clear\)\.$/)).toBeVisible();
  const before = await row.textContent();
  await quote.getByText('Working time', { exact: true }).click();
  await quote.getByLabel('Tool designs').fill('6');
  await expect(row).not.toHaveText(before!);

  await openPart(bench, 'Order of work');
  const { bytes } = await saved(bench, 'Save the bench sheet as PDF');
  const words = (await readPdf(new Uint8Array(bytes))).flatMap((page) => page.words.map(({ text }) => text)).join(' ');
  expect(words).toMatch(/Tooling .*Spine .*clear .*Front .*clear .*About [\d.]+ m of line/);
});
