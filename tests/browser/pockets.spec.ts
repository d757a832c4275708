import { expectAccessible } from './accessibility.ts';
import { expect, openCard, setUnits, test } from './bench.ts';

test('board covered and pocket depth follow each other, whichever is typed, in both units, with what other depths would bring', async ({
  bench,
}) => {
  await openCard(bench, 'seam');
  const share = bench.getByRole('textbox', { name: 'Board covered', exact: true });
  const depth = bench.getByRole('textbox', { name: 'Pocket depth', exact: true });
  const rows = bench.getByRole('table', { name: 'Loading and hold by the board covered' }).locator('tbody tr');

  // The example is a job of before, whose pockets cover half of a board of 165 mm.
  await expect(share).toHaveValue('50 %');
  await expect(depth).toHaveAttribute('placeholder', '85.5 mm, worked out');
  await expect(rows).toHaveText([/^50 %, as it is85\.5 mm/, /^67 %/, /^75 %/]);

  await depth.fill('100');
  await expect(share).toHaveValue('');
  await expect(share).toHaveAttribute('placeholder', '59 %, worked out');
  await expect(rows).toHaveText([/^50 %/, /^59 %, as it is100 mm/, /^67 %/, /^75 %/]);

  await share.pressSequentially('75');
  await expect(share).toHaveValue('75');
  await expect(depth).toHaveValue('');
  await expect(depth).toHaveAttribute('placeholder', '127 mm, worked out');
  await expect(rows).toHaveText([/^50 %/, /^67 %/, /^75 %, as it is127 mm/]);

  await setUnits(bench, 'in');
  await expect(depth).toHaveAttribute('placeholder', /^5 in, worked out$/);
  await depth.fill('4 1/2');
  await expect(share).toHaveAttribute('placeholder', '68 %, worked out');
  await bench.keyboard.press('Control+z');
  await expect(share).toHaveValue('75');
  await expect(depth).toHaveValue('');

  await bench.setViewportSize({ width: 390, height: 844 });
  await expect(rows.first()).toBeVisible();
  expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectAccessible(bench);
});
