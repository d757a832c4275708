import AxeBuilder from '@axe-core/playwright';
import { expect, exploreSettles, headline, openExample, test } from './bench.ts';

const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(colorScheme, () => {
    test.use({ colorScheme });

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
      const { violations } = await new AxeBuilder({ page: bench }).withTags(WCAG_22_AA).analyze();
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    });

    test('so does the new cover dialog, and the bench on a telephone', async ({ bench }) => {
      await bench.setViewportSize({ width: 390, height: 844 });
      await exploreSettles(bench);
      const onBench = await new AxeBuilder({ page: bench }).withTags(WCAG_22_AA).analyze();
      await bench.getByRole('button', { name: 'New cover' }).click();
      await bench.getByRole('button', { name: 'Start this cover' }).click();
      await expect(bench.getByRole('dialog').getByLabel('Width')).toHaveAccessibleDescription(/Needed/);
      const inDialog = await new AxeBuilder({ page: bench }).withTags(WCAG_22_AA).include('dialog').analyze();
      const violations = [...onBench.violations, ...inDialog.violations];
      expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    });
  });
}
