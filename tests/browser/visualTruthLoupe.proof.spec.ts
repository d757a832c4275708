import type { Page } from '@playwright/test';
import fc from 'fast-check';
import { gapWords } from '../../src/app/sheet/gapWords.ts';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EDGES, type Edge, gapAt } from '../../src/core/fold/edges.ts';
import { RANGE_POINTS } from '../../src/core/leather/leatherModel.ts';
import { printer } from '../../src/core/units/printer.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { proofSize } from '../proof/proofSize.ts';
import { expect, openDocument, test } from './bench.ts';

/** Pixels of the screen to one px: enough that a pixel is finer than what is asked, at every magnification met. */
const FINE = 10;
/** How far the zone as drawn may be off the gap of the report, mm. */
const OFF = 0.05;
const SEED = 20261126;

// A small page, so that so fine a picture of it can be held.
test.use({ deviceScaleFactor: FINE, viewport: { width: 1024, height: 480 } });

const { gap } = printer('mm');

/** Jobs of all kinds; every second one is cut too small by some millimetres, so that it overruns. */
const jobs = fc.sample(
  fc.tuple(jobDocument, fc.double({ min: 0.5, max: 9, noNaN: true }), fc.constantFrom(...RANGE_POINTS)),
  { seed: SEED, numRuns: proofSize(50, 3) },
);

function documentOf(document: object, short: number, isShort: boolean) {
  if (!isShort) return document;
  const { outside } = coverDesign(soundJob(document)).pieces;
  return {
    ...document,
    pattern: { outsideWidth_mm: outside.width - 2 * short, outsideHeight_mm: outside.height - short },
  };
}

/**
 * Breadth of the hatched zone in a picture of the glass, px of the picture, and whether it is hatched as an overrun: from the
 * first to the last column that has the colour of a hatch, in the rows between the faces of the board. Null without any.
 */
const hatchedIn = (page: Page, picture: Buffer, rows: readonly [number, number]) =>
  page.evaluate(
    async ([source, [top, bottom]]) => {
      const shown = new Image();
      shown.src = source;
      await shown.decode();
      const context = new OffscreenCanvas(shown.width, shown.height).getContext('2d')!;
      context.drawImage(shown, 0, 0);
      const [first, height] = [Math.ceil(top), Math.floor(bottom) - Math.ceil(top)];
      const { data } = context.getImageData(0, first, shown.width, height);
      let [from, to, blue, aubergine] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
      for (let i = 0; i < data.length; i += 4) {
        const [r, g, b] = [data[i]!, data[i + 1]!, data[i + 2]!];
        const isBlue = b - r > 37;
        const isAubergine = r - g > 40 && b - g > 10;
        const column = (i / 4) % shown.width;
        const row = first + Math.floor(i / 4 / shown.width);
        // Within the rim: the ring of the focus around it is blue as well.
        const isInGlass = Math.hypot(column - shown.width / 2, row - shown.height / 2) < 0.48 * shown.width;
        if (!isInGlass || (!isBlue && !isAubergine)) continue;
        if (isBlue) blue++;
        else aubergine++;
        [from, to] = [Math.min(from, column), Math.max(to, column + 1)];
      }
      return blue + aubergine === 0 ? null : { breadth: to - from, isOverrun: aubergine > blue };
    },
    [`data:image/png;base64,${picture.toString('base64')}`, rows] as const,
  );

test('the zone hatched in the loupe is as broad as the gap of the report, at the magnification that it says', async ({
  bench,
}) => {
  test.setTimeout(jobs.length * 30_000 + 60_000);
  await bench.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  const rows: string[] = [];
  let worst = 0;
  await bench.getByRole('button', { name: 'Look at the edges' }).click();
  const glass = bench.getByRole('slider', { name: /^Loupe on the/ });
  for (const [index, [drawn, short, point]] of jobs.entries()) {
    const document = documentOf(drawn, short, index % 2 === 1);
    const { fits } = coverDesign(soundJob(document));
    await openDocument(bench, { ...document, name: `Job ${index}` });
    const ends = bench.getByRole('group', { name: 'Leather' }).getByRole('radio');
    if ((await ends.count()) > 0) await ends.nth(RANGE_POINTS.indexOf(point)).check();
    for (let turn = 0; turn < EDGES.length; turn++) {
      const edge = await turnedTo(glass, turn > 0);
      const expected = gapAt(fits[point], edge);
      // The corner is in the pocket at head and tail as well.
      await glass.press('End');
      await expect(glass).toHaveAttribute('aria-valuetext', new RegExp(`^${gapWords(expected, { gap })}, .*100 %`));
      const said = await bench.locator('.magnification').textContent();
      const magnification = Number(said?.replace('× ', ''));
      const picture = await glass.screenshot();
      const [frame, zone] = [await glass.boundingBox(), await glass.locator('.gap-zone').boundingBox()];
      const top = zone!.y - frame!.y;
      const found = await hatchedIn(bench, picture, [
        (top + 0.1 * zone!.height) * FINE,
        (top + 0.9 * zone!.height) * FINE,
      ]);
      const measured = (found?.breadth ?? 0) / ((FINE * magnification * 96) / 25.4);
      if (found !== null && Math.abs(expected) > OFF) expect([edge, found.isOverrun]).toEqual([edge, expected < 0]);
      const off = Math.abs(measured - Math.abs(expected));
      worst = Math.max(worst, off);
      rows.push(
        `${index} ${edge} ${point} x${magnification}: report ${expected.toFixed(3)} mm, drawn ${measured.toFixed(3)} mm`,
      );
      expect([rows.at(-1), off < OFF]).toEqual([rows.at(-1), true]);
    }
  }
  console.info(`${rows.join('\n')}\n${rows.length} zones, worst ${worst.toFixed(3)} mm off`);

  /** Goes to the next edge where asked; gives the edge that the glass says it is on. */
  async function turnedTo(slider: typeof glass, isNext: boolean): Promise<Edge> {
    const before = await slider.getAttribute('aria-label');
    if (isNext) {
      await slider.press('PageDown');
      await expect(slider).not.toHaveAttribute('aria-label', before!);
    }
    const label = await slider.getAttribute('aria-label');
    const name = label!.replace('Loupe on the ', '');
    const edges: Readonly<Record<string, Edge>> = {
      'front fore-edge': 'frontForeEdge',
      'back fore-edge': 'backForeEdge',
      head: 'head',
      tail: 'tail',
    };
    return edges[name]!;
  }
});
