import { readFileSync } from 'node:fs';
import { followHpgl } from '../output/machine/hpglReading.ts';
import { machineDocument } from '../output/machine/machines.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, openExample, openPart, test } from './bench.ts';

const file = (content: object) => ({
  name: 'laser.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(content)),
});

test('a machine is opened, its kerf tried, taken out and put back, and the template goes to it pass by pass', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const machines = await openPart(bench, 'Machines');
  await expect(machines).toContainText('No machine yet.');
  await machines.getByLabel('Machine file').setInputFiles(file({ ...machineDocument, speed: 3 }));
  await expect(machines.getByRole('alert')).toContainText('speed: got a field that a machine does not have');
  await machines.getByLabel('Machine file').setInputFiles(file(machineDocument));
  await expect(machines.getByRole('heading', { name: 'Bench laser' })).toBeVisible();

  await machines.getByLabel('Leather tried').fill('goat');
  await machines.getByLabel('Its thickness').fill('1.2');
  await machines.getByLabel('Row across the bed, read').fill('78.1');
  await machines.getByLabel('Row along the bed, read').fill('77.9');
  await expect(machines).toContainText('Kerf 0.200 mm, give or take 0.007 mm.');
  await machines.getByRole('button', { name: 'Put it into the table' }).click();
  await expect(machines.getByLabel('Kerf 2, leather')).toHaveValue('goat');
  await expectAccessible(bench);

  await machines.getByRole('button', { name: 'Take this machine out' }).click();
  await expect(machines).toContainText('Bench laser was taken out.');
  await machines.getByRole('button', { name: 'Put it back' }).click();
  await machines.getByLabel('Bed width').fill('');
  await expect(machines).toContainText('One entry is missing or wrong.');
  await machines.getByLabel('Bed width').fill('1300');

  const template = await openPart(bench, 'Template');
  await template.getByLabel('Machine', { exact: true }).selectOption('Bench laser');
  await template.getByLabel('Leather, for the kerf').selectOption('goat');
  await template.getByLabel('Its thickness').fill('1.2');
  await expect(template).toContainText('Kerf 0.2 mm, from the row of 1.2 mm in the table.');
  await expect(template.getByRole('table')).toContainText('Holes');
  await expect(template).toContainText('The head travels');
  await expectAccessible(bench);
  const [download] = await Promise.all([
    bench.waitForEvent('download'),
    template.getByRole('button', { name: 'Save as HPGL' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('tide-ledger-card-bench-laser-kerf-0.2-mm.hpgl');
  const { drawn, end } = followHpgl(readFileSync(await download.path(), 'utf8'));
  expect(drawn.filter(({ pen }) => pen === 4).length).toBe(3);
  expect(end.isDown).toBe(false);
});
