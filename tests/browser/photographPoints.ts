import type { Locator, Page } from '@playwright/test';
import type { Vec2 } from '../../src/core/index.ts';

/** Where a point of a photograph is, pixels of the file, by what it says. */
export async function saidPlace(point: Locator): Promise<Vec2> {
  const said = /: (\d+) across, (\d+) down/.exec((await point.getAttribute('aria-label')) ?? '');
  return [Number(said?.[1]), Number(said?.[2])];
}

/** Drags the points of a photograph, in their order, to places in a picture so many pixels wide. */
export async function dragPoints(page: Page, drawing: Locator, wide: number, places: readonly Vec2[]): Promise<void> {
  await drawing.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  for (const [i, [x, y]] of places.entries()) {
    const box = (await drawing.locator('canvas').first().boundingBox())!;
    const point = (await drawing.locator('.placed-point').nth(i).boundingBox())!;
    await page.mouse.move(point.x + point.width / 2, point.y + point.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + (x * box.width) / wide, box.y + (y * box.width) / wide, { steps: 4 });
    await page.mouse.up();
  }
}

/** Moves points by arrow keys to within a pixel of their places. */
export async function putPointsByKeys(page: Page, drawing: Locator, places: readonly Vec2[]): Promise<void> {
  for (const [i, place] of places.entries()) {
    const point = drawing.locator('.placed-point').nth(i);
    await point.focus();
    const at = await saidPlace(point);
    for (const [axis, less, more] of [
      [0, 'ArrowLeft', 'ArrowRight'],
      [1, 'ArrowUp', 'ArrowDown'],
    ] as const) {
      const by = Math.round(place[axis]) - at[axis];
      const key = by < 0 ? less : more;
      for (let left = Math.abs(by); left > 0; left -= left >= 10 ? 10 : 1)
        await page.keyboard.press(left >= 10 ? `Shift+${key}` : key);
    }
  }
}
