import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { soundJob } from '../jobArbitrary.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, exploreSettles, goToPlace, headline, openCard, openExample, test } from './bench.ts';

const doubt = 'doubts.book.width_mm.u';

test('under the verdict stands what makes it least sure, and the chances are said to rest on the doubts', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  await expect(headline(bench)).toContainText(/Closes in \d\d of 100 at 4 to 5 oz, fits in \d\d of 100/);
  await expect(bench.locator('.verdict')).toContainText(/Least sure: how [^.]+\./);
  await expect(await openCard(bench, 'checks')).toContainText('This holds if the doubts assumed are right.');
});

test('the parts of the doubt of an edge stand in a table, most first, with their shares', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const panel = (await openCard(bench, 'sure')).getByRole('region', { name: 'How sure' });
  await panel.getByText(/^Fore-edges, both together: spare/).press('Enter');
  const table = panel.getByRole('table', { name: /Fore-edges/ });
  await expect(table.getByRole('columnheader')).toHaveText(['Unsure', 'Give or take', 'Moves it by', 'Share']);
  const shares = async () =>
    (await table.locator('tbody td:last-child').allTextContents()).map((text) => Number.parseInt(text, 10));
  await expect.poll(async () => (await shares()).length).toBeGreaterThan(4);
  const lines = (await shares()).slice(0, -1);
  expect(lines).toEqual([...lines].sort((a, b) => b - a));
  expect(Math.abs((await shares()).reduce((sum, share) => sum + share, 0) - 100)).toBeLessThanOrEqual(5);
  await expectAccessible(bench, '.how-sure');
});

test('every measurement that is worth taking leads to its field by Enter, folded away or not', async ({ bench }) => {
  for (const { document } of EXAMPLE_JOBS.slice(0, 2)) {
    await openExample(bench, String(document.name).toLowerCase());
    const { measureNext } = designReport(coverDesign(soundJob(document))).doubt;
    expect(measureNext.length).toBeGreaterThan(3);
    const next = (await openCard(bench, 'sure')).getByRole('region', { name: 'How sure' }).getByRole('listitem');
    await expect(next).toHaveCount(measureNext.length);
    for (const [i, { path, words, saves_mm, of }] of measureNext.entries()) {
      await expect(next.nth(i)).toHaveText(`${words} saves ${saves_mm.toFixed(2)} mm of ${of}`);
      await next.nth(i).getByRole('button').press('Enter');
      const field = bench.locator(`[data-path="${path}"]`);
      await expect(field).toBeFocused();
      await expect(field).toBeInViewport();
      await expect(field).toHaveAccessibleName(/./);
    }
  }
});

test('a doubt is typed as give or take, changes the chance, and comes back with undo and when emptied', async ({
  bench,
}) => {
  await bench.setViewportSize({ width: 390, height: 844 });
  await openExample(bench, 'tide ledger');
  const before = (await headline(bench).textContent())!;
  const form = await openCard(bench, 'sure');
  await form.getByText('How far each figure may be off').press('Enter');
  const field = form.locator(`[data-path="${doubt}"]`);
  await expect(field).toHaveAttribute('placeholder', '0.5 mm, usual');
  await (await openCard(bench, 'cut')).getByLabel('Outside width', { exact: true }).fill('382.5');
  await field.fill('6');
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'tight');
  await field.fill('60');
  await expect(bench.locator('.issue-list')).toContainText('Allowed: 0 to 40 mm.');
  await bench.keyboard.press('Control+z');
  await expect(field).toHaveValue('');
  await bench.keyboard.press('Control+z');
  await expect(headline(bench)).toHaveText(before);
  await field.fill('6');
  await field.fill('');
  await expect(headline(bench)).toHaveText(before);
  await form.getByText('How it comes about').first().press('Enter');
  await form.getByLabel(/^Comes from: Doubt of the width$/).selectOption('assumed');
  await expect(form.locator('.doubt').first()).toContainText('Assumed, ruler A.');
  await expectAccessible(bench, '.cards');
  expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});

test('casing the leather says what it costs, and the cut allows for it', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const making = (await openCard(bench, 'leather')).getByRole('region', { name: 'Making', exact: true });
  await making.getByLabel('cased').check();
  await expect(making).toContainText(/Shrinks 1 %: 3\.\d mm of width/);
  const across = making.getByLabel('Change of size across');
  await expect(across).toHaveAttribute('placeholder', '−1 %, usual');
  await across.fill('-0.5');
  await expect(making).toContainText('understood: −0.5 %');
  await expect(making).toContainText('Shrinks 0.5 %');
});

test('Explore shows how the chance of closing grows with the ease', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  await goToPlace(bench, 'Explore');
  await exploreSettles(bench);
  await bench.getByRole('button', { name: 'Ease against covers that close' }).press('Enter');
  await expect(bench.getByLabel('How does')).toHaveValue('chanceCloses');
  await expect(bench.locator('.explore-reading output')).toContainText(/covers that close \d\d(\.\d)? %/);
});
