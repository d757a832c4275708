import { expectAccessible } from './accessibility.ts';
import { expect, exploreSettles, headline, openExample, test } from './bench.ts';

test.describe('with the scene', () => {
  test.use({ look: 'unfilled' });

  test('the bench meets WCAG 2.2 AA, with every part unfolded and a cover that fails', async ({ bench }) => {
    await openExample(bench, 'choir book');
    await bench.locator('.form-column').getByLabel('Outside width').fill('372');
    await bench.getByLabel('Height', { exact: true }).fill('tall');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
    await exploreSettles(bench);
    await bench.locator('details').evaluateAll((all) => {
      for (const details of all) (details as HTMLDetailsElement).open = true;
    });
    await bench.getByRole('button', { name: /^front overrun/ }).click();
    await expect(bench.locator('.tuner')).toContainText('front overrun');
    await expectAccessible(bench);
  });
});

test('so does the bench on a telephone, and the new cover dialog', async ({ bench }) => {
  await bench.setViewportSize({ width: 390, height: 844 });
  await exploreSettles(bench);
  await expectAccessible(bench);
  await bench.getByRole('button', { name: 'New cover' }).click();
  await bench.getByRole('button', { name: 'Start this cover' }).click();
  await expect(bench.getByRole('dialog').getByLabel('Width')).toHaveAccessibleDescription(/Needed/);
  await expectAccessible(bench, 'dialog');
});
