import { expect, openExample, test } from './bench.ts';

test('the film is moved step by step with keys, says what each step is about, and is led to by its address', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const run = bench.getByLabel('Making', { exact: true });
  const caption = bench.locator('.film-caption');
  await expect(run).toHaveAttribute('aria-valuetext', 'finished');
  await expect(caption).toHaveCount(0);
  await run.focus();
  await run.press('Home');
  await expect(caption).toContainText('Cut the leather');
  await run.press('PageUp');
  await expect(caption).toContainText('Skive and bevel');
  await run.press('PageDown');
  await expect(caption).toContainText('Cut the leather');
  await bench.goto('#cover/film-secondBoard');
  await expect(caption).toContainText('Bend the boards back');
  await expect(caption).toContainText(/each board bent back \d\d degrees/);
  await bench.goto('#cover/film-rest');
  await expect(caption).toContainText(/Let go ?it (stands open|may rest|springs|stays) .*, by how stiff/);
});

test('the film plays on its own, and stands still when it is pressed again', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const run = bench.getByLabel('Making', { exact: true });
  const place = async (): Promise<number> => Number(await run.inputValue());
  await bench.getByRole('button', { name: 'Play the film of the making' }).click();
  await expect.poll(place).toBeGreaterThan(0.02);
  expect(await place()).toBeLessThan(0.9);
  await bench.getByRole('button', { name: 'Stop the film' }).click();
  const stood = await place();
  // Two more frames would have moved it.
  await bench.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  expect(await place()).toBe(stood);
});
