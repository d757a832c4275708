import { readFileSync } from 'node:fs';
import { expectAccessible } from './accessibility.ts';
import { expect, test } from './bench.ts';

test('a leather is tested by keyboard at 390 px: read, contradicted, read again a day later, and kept', async ({
  bench,
}) => {
  await bench.setViewportSize({ width: 390, height: 844 });
  await bench.goto('#leathers');
  const leather = { format: 'coverwright-leather', version: 1, name: 'Harbour calf', min_mm: 1.6, max_mm: 2 };
  await bench.getByLabel('File of leathers').setInputFiles({
    name: 'leathers.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ format: 'coverwright-leathers', version: 1, leathers: [leather] })),
  });
  await bench.locator('.leather-tile a').click();
  const card = (name: string) => bench.getByRole('article', { name });
  const unfold = async (name: string, entries: string): Promise<void> => {
    await card(name).locator('summary', { hasText: entries }).focus();
    await bench.keyboard.press('Enter');
  };

  await test.step('readings of a fold: what is missing is named, and the result comes with the second', async () => {
    const fold = card('Fold it, and bend it');
    await expect(fold).toContainText('Not tested yet');
    await unfold('Fold it, and bend it', 'Enter what you read');
    const form = fold.locator('form').nth(1);
    const add = async (thickness: string, over: string): Promise<void> => {
      await form.getByLabel('Thickness of the strip').fill(thickness);
      await form.getByLabel('Over the fold').fill(over);
      await bench.keyboard.press('Enter');
    };
    await add('2', '');
    await expect(form).toContainText('Over the fold is missing.');
    await add('2', '4.8');
    await expect(fold.locator('.findings')).toContainText('Bend ratio 0.20, give or take 0.06');
    await add('2 mm', '0.48 cm');
    await expect(fold.locator('.findings')).toContainText('Bend ratio 0.20, give or take 0.05');
    await add('2', '6.2');
    await expect(fold.locator('.readings')).toContainText('6.2 mm over the fold');
    await expect(fold.locator('.readings')).toContainText('Contradicts the others: read it again.');
    await fold.getByRole('button', { name: 'Remove reading 3' }).focus();
    await bench.keyboard.press('Enter');
    await expect(fold.locator('.findings')).toContainText('Bend ratio 0.20, give or take 0.05');
    await expect(fold.locator('summary', { hasText: 'Readings: 2' })).toBeFocused();
  });

  await test.step('a crease is read after five minutes, and the reading changed after a day', async () => {
    const crease = card('Crease it, and let go');
    await unfold('Crease it, and let go', 'Enter what you read');
    await crease.getByLabel('After five minutes').fill('30');
    await bench.keyboard.press('Enter');
    await expect(crease.locator('.readings')).toContainText('after a day not read yet');
    await crease.getByRole('button', { name: 'Change reading 1' }).focus();
    await bench.keyboard.press('Enter');
    await expect(crease.getByLabel('After five minutes')).toHaveValue('30');
    await expect(crease.getByLabel('After five minutes')).toBeFocused();
    await crease.getByLabel('After a day').fill('45°');
    await bench.keyboard.press('Enter');
    await expect(crease.locator('.findings')).toContainText('Kept after a day 75 %, give or take 2 %');
    await expect(crease.locator('.findings')).toContainText('Foretold for a week 72 %');
    await expect(crease.locator('.readings li')).toHaveCount(1);
  });

  await test.step('a strip that hangs straight down says what to do instead of a result', async () => {
    const droop = card('Let it hang');
    await unfold('Let it hang', 'Enter what you read');
    const entries = {
      Overhang: '200',
      'Tip below the edge': '196',
      'Length of the strip': '240',
      'Width of the strip': '30',
    };
    for (const [name, text] of Object.entries({
      ...entries,
      'Thickness of the strip': '2',
      'Weight of the strip': '13.7',
    }))
      await droop.getByLabel(name).fill(text);
    await bench.keyboard.press('Enter');
    await expect(droop.locator('.readings')).toContainText('let less of it hang over');
    await expect(droop.locator('.findings')).toHaveText(/Not tested yet/);
  });

  await test.step('the strips are saved as PDF, and nothing is wider than the page', async () => {
    const download = bench.waitForEvent('download');
    await bench.getByRole('button', { name: 'Save the strips as PDF, A4' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe('harbour-calf-a4.test-strips.pdf');
    expect(readFileSync(await file.path(), 'latin1').startsWith('%PDF')).toBe(true);
    expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible(bench);
  });

  await test.step('all of it is there after a reload', async () => {
    await bench.reload();
    await expect(card('Fold it, and bend it').locator('.findings')).toContainText('Bend ratio 0.20');
    await expect(card('Crease it, and let go').locator('summary', { hasText: 'Readings: 1' })).toBeVisible();
  });
});
