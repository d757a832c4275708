import { expect, test } from './bench.ts';

const leather = (name: string, min_mm: number, max_mm: number, price_per_dm2: number, more: object = {}) => ({
  format: 'coverwright-leather',
  version: 1,
  name,
  min_mm,
  max_mm,
  price_per_dm2,
  ...more,
});

const THREE = JSON.stringify({
  format: 'coverwright-leathers',
  version: 1,
  leathers: [
    leather('Oak bark shoulder', 2.4, 2.8, 2.1, { temper: 'firm', colour: '#7a4a2a' }),
    leather('Harbour calf', 1.2, 1.4, 3.4, { temper: 'soft' }),
    leather('Side, chrome', 1.6, 2, 1.5, { tannage: 'chrome' }),
  ],
});

test('two or three leathers stand side by side for the open job, and go to a customer as a page', async ({ bench }) => {
  await bench.goto('#leathers/choice');
  await expect(bench.locator('.leather-choice')).toContainText('Put at least two among your leathers');
  await bench.locator('.leather-choice').getByRole('link', { name: 'your leathers' }).click();
  const chooser = bench.waitForEvent('filechooser');
  await bench.getByRole('button', { name: 'Import a file' }).click();
  await (await chooser).setFiles({ name: 'three.json', mimeType: 'application/json', buffer: Buffer.from(THREE) });
  await expect(bench.getByRole('status').filter({ hasText: 'three.json' })).toContainText('3 leathers added');
  await bench.getByRole('link', { name: 'Which leather for this book' }).click();

  const table = bench.locator('.leather-choice table');
  await expect(table.getByRole('columnheader')).toHaveCount(3);
  const row = (name: string) => table.getByRole('row', { name: new RegExp(`^${name}`) });
  await expect(row('Closes in')).toContainText('of 100');
  // The springy model has answered for each.
  await expect(row('After a day pressed').getByText(/stays|stands|may/)).toHaveCount(3, { timeout: 60_000 });
  await expect(row('Price of the leather').getByRole('cell')).toHaveCount(3);
  await expect(bench.locator('.leather-choice')).toContainText(/in its place: .*(heavier|lighter)/);

  await bench.getByLabel('Third').selectOption('');
  await expect(table.getByRole('columnheader')).toHaveCount(2);
  const download = bench.waitForEvent('download');
  await bench.getByRole('button', { name: 'Save the customer’s page as PDF' }).click();
  expect((await download).suggestedFilename()).toMatch(/leathers.*\.pdf$/i);
  await bench.setViewportSize({ width: 390, height: 844 });
  const wide = await bench.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
});
