import { expectAccessible } from './accessibility.ts';
import { expect, openExample, openPart, setUnits, test } from './bench.ts';

test('an iron is chosen, measured, kept and taken back, by keys too and in inches', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const panel = await openPart(bench, 'Construction');
  const irons = panel.getByRole('region', { name: 'Iron or punch' });
  const choice = irons.getByLabel('Holes made with');
  await expect(panel).toContainText(/\d+ slits through the cover/);
  await choice.selectOption('an iron not in the list');
  await expect(irons.getByLabel('lacing chisel')).toBeChecked();

  // The stride follows from what is measured, and the holes from the stride.
  await irons.getByLabel('Ten strides measured').fill('2 in');
  await expect(irons.getByLabel('Stride', { exact: true })).toHaveValue('5.08 mm');
  await expect(irons.getByLabel('Stitches per inch')).toHaveValue('5');
  await irons.getByLabel('Teeth').fill('4, 40');
  await expect(irons).toContainText('Write whole numbers from 1 to 24, as 10, 2.');
  await irons.getByLabel('Teeth').fill('4, 1');
  await expect(panel).toContainText(/Tail and head: \d+ strokes of 4 teeth/);
  await expect(panel).toContainText('Each stroke starts with a tooth in the last hole of the one before.');
  await expectAccessible(bench);

  // Lace goes through round holes of a punch.
  await irons.getByLabel('drive punch').check();
  await expect(panel).toContainText(/\d+ holes through the cover/);
  await irons.getByRole('heading', { name: 'Iron or punch' }).click();
  await bench.keyboard.press('Control+z');
  await expect(irons.getByLabel('lacing chisel')).toBeChecked();

  await irons.getByRole('button', { name: 'Keep in my irons' }).press('Enter');
  await expect(irons.getByRole('button', { name: 'Take out of my irons' })).toBeVisible();
  await choice.selectOption('any tool, spaced evenly');
  await expect(panel).not.toContainText('Tail and head');
  await choice.selectOption('lacing chisel, 5.08 mm');
  await expect(irons.getByLabel('Teeth')).toHaveValue('4, 1');

  await setUnits(bench, 'in');
  await irons.getByLabel('Stitches per inch').fill('8');
  await expect(irons.getByLabel('Stride', { exact: true })).toHaveValue('1/8 in');
  await irons.getByText('Strides by millimetre and by inch').press('Enter');
  const row = irons.getByRole('row', { name: /lacing chisel/ });
  await expect(row).toHaveText('lacing chisel5.08 mm52 in');
  await expectAccessible(bench);
});
