import { expectAccessible } from './accessibility.ts';
import { expect, test } from './bench.ts';

test.beforeEach(async ({ bench }) => {
  await bench.goto('#workbench/trial');
});

test('a pressed term says what it means and shows it on this book; Escape closes it where it was opened', async ({
  bench,
}) => {
  const term = bench.getByRole('heading', { name: 'Card trial' }).getByRole('button', { name: 'Card trial' });
  await term.focus();
  await bench.keyboard.press('Enter');
  const note = bench.getByRole('dialog', { name: 'Card trial' });
  await expect(note).toContainText('The cover cut from card');
  await bench.keyboard.press('Escape');
  await expect(note).toBeHidden();
  await expect(term).toBeFocused();
});

for (const width of [1440, 390])
  test(`the note of a term with a drawing is read whole at ${width} px`, async ({ bench }) => {
    await bench.setViewportSize({ width, height: 800 });
    await bench.goto('#strips');
    await bench.getByRole('heading', { name: 'The wrap laid out' }).getByRole('button', { name: 'wrap' }).click();
    const note = bench.getByRole('dialog', { name: 'Wrap' });
    await expect(note.getByRole('img', { name: 'Section across the spine of this book' })).toBeVisible();
    const { x, y, width: wide, height } = (await note.boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(x + wide).toBeLessThanOrEqual(width);
    expect(y + height).toBeLessThanOrEqual(800);
    await expectAccessible(bench, '.term-note');
  });

test('no drawing of a term is filled where only its lines are meant', async ({ bench }) => {
  await bench.goto('#words');
  await expect(bench.getByRole('img', { name: 'The outside of this cover, laid flat' }).first()).toBeVisible();
  const filled = bench
    .locator('.term-drawing path')
    .evaluateAll((paths) =>
      paths.filter((path) => getComputedStyle(path).fill === 'rgb(0, 0, 0)').map((path) => path.getAttribute('class')),
    );
  expect(await filled).toEqual([]);
});

test('on a telephone the drawing of a word stands beside its meaning', async ({ bench }) => {
  await bench.setViewportSize({ width: 390, height: 844 });
  await bench.goto('#words');
  const backbone = bench.locator('#word-backbone');
  await expect(backbone.locator('svg')).toBeVisible();
  const drawing = (await backbone.locator('svg').boundingBox())!;
  const words = (await backbone.locator('strong').boundingBox())!;
  expect(drawing.y).toBeLessThan(words.y + 40);
  expect(drawing.width).toBeLessThan(160);
});
