import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** The rules of them that depend on colours. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * Expects that a page meets WCAG 2.2 AA on light paper and its colours on dark paper too.
 * @param part selector of the part to check instead of the whole page
 */
export async function expectAccessible(page: Page, part = 'html'): Promise<void> {
  // The checker knows no top layer: without this, what is sticky on the page counts as lying over an open dialog.
  await page.locator('dialog[open], :popover-open').evaluateAll((all) => {
    for (const each of all) (each as HTMLElement).style.zIndex = '9';
  });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const axe = new AxeBuilder({ page }).include(part);
    const { passes, violations } = await (colorScheme === 'light'
      ? axe.withTags(WCAG_22_AA)
      : axe.withRules(COLOUR_RULES)
    ).analyze();
    expect(passes.map(({ id }) => id)).toContain('color-contrast');
    expect(violations.map(({ id, nodes }) => [colorScheme, part, id, nodes.map(({ html }) => html)])).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light' });
}
