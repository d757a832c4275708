import { expect, openExample, stripSettles, test } from './bench.ts';

test('the section says where the spare wrap is, pushed home, and dashes the leather as it will lie', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  await stripSettles(bench);
  const section = bench.locator('.section-drawing');
  await expect(section.locator('figcaption')).toContainText(
    /Pushed home: [\d.]+ mm of spare wrap, [\d.]+ mm of it at each fore-edge\. Let go, friction keeps up to [\d.]+ mm there;/,
  );
  await expect(section).toContainText('Dashed: the leather as it will lie by itself.');
  await expect(section.locator('path.lies')).toHaveCount(1);
  // An open book is drawn pulled tight alone.
  await bench.getByRole('slider', { name: 'Open the book' }).fill('90');
  await expect(section.locator('path.lies')).toHaveCount(0);
});
