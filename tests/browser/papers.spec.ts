import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runProcess, scratch } from '../cli/commandLine.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { boundsOf } from '../output/outlineDistance.ts';
import { lyingOn, pagesOf } from '../output/patternReading.ts';
import { readPdf } from '../output/pdfReading.ts';
import { expect, goToPlace, openExample, openPart, renameJob, test } from './bench.ts';

/** End points of lines in the data of an SVG path. */
const pointsOf = (data: string): [number, number][] =>
  [...data.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

test('screen and template show the outside the same way up, its grain side, and the screen lights up the same place', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  await goToPlace(bench, 'Strips');
  const flat = bench.locator('.strips-place').getByRole('img', { name: /^Flat pattern to scale/ });
  await expect(bench.getByText('Grain side up, as the template')).toBeVisible();
  // Where the seam starts and finishes tells head from tail and front from back.
  const drawnMarks = defined(await flat.locator('[data-layer=mark] path').first().getAttribute('d'));
  const marks = pointsOf(drawnMarks);
  expect(marks.length).toBeGreaterThan(4);

  const template = await openPart(bench, 'Template');
  await template.getByRole('radio', { name: 'leather', exact: true }).check();
  await template.getByRole('radio', { name: 'roll', exact: true }).check();
  await expect(template.getByRole('heading', { name: 'In leather, grain side up' })).toBeVisible();
  await expect(template.locator('[data-layer=mark] path').first()).toHaveAttribute('d', drawnMarks);
  const [download] = await Promise.all([
    bench.waitForEvent('download'),
    bench.getByRole('button', { name: 'Save the template as PDF' }).click(),
  ]);
  const pages = await readPdf(new Uint8Array(readFileSync(await download.path())));
  const [page] = pagesOf(pages, 'Outside', 'Tide ledger, leather');
  const { low, width, height } = boundsOf(lyingOn(page!, { width: 384, height: 260 }));
  const drawn = page!.paths.flatMap(({ chains }) => chains.flat());
  for (const [x, y] of marks) {
    const off = drawn.map((point) => Math.hypot(point[0] - low[0] - x, point[1] - low[1] - (height - y)));
    expect([x, y, Math.min(...off) < 0.02]).toEqual([x, y, true]);
  }

  await goToPlace(bench, 'Strips');
  // The front fore-edge is at the right, seen from the grain side.
  await bench.getByRole('button', { name: /^front edge margin/ }).focus();
  const lit = flat.locator('rect.lit');
  await expect(lit).toHaveCount(1);
  const [x, broad] = await Promise.all(['x', 'width'].map((name) => lit.getAttribute(name)));
  expect(Number(x) + Number(broad)).toBeCloseTo(width, 2);
});

test('a name in letters of another script is saved with them, and what they lack is said beside the button', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  await renameJob(bench, 'Βιβλίο 潮');
  await openPart(bench, 'Order of work');
  const [download] = await Promise.all([
    bench.waitForEvent('download'),
    bench.getByRole('button', { name: 'Save the bench sheet as PDF' }).click(),
  ]);
  await expect(bench.getByText('Its letters lack 潮: a box stands for it.')).toBeVisible();
  const [page] = await readPdf(new Uint8Array(readFileSync(await download.path())));
  expect(nth(page!.words, 0).text).toBe('Βιβλίο □');
  for (const font of page!.fonts) expect(font.size).toBeGreaterThan(1000);
});

test('the command writes the files that the page saves, byte for byte', async ({ bench }) => {
  const { folder, remove } = scratch('same-files-');
  try {
    await openExample(bench, 'tide ledger');
    const template = await openPart(bench, 'Template');
    const saved = new Map<string, Buffer>();
    const save = async (button: string): Promise<void> => {
      const [download] = await Promise.all([
        bench.waitForEvent('download'),
        bench.getByRole('button', { name: button }).click(),
      ]);
      saved.set(download.suggestedFilename(), readFileSync(await download.path()));
    };
    await save('Save the template as PDF');
    await save('Save as SVG');
    await save('Save as DXF');
    await template.getByRole('radio', { name: 'inside face, mirrored' }).check();
    await save('Save the template as PDF');
    await openPart(bench, 'Order of work');
    await save('Save the bench sheet as PDF');

    const address = await bench.evaluate(() => location.origin + location.pathname + location.search);
    const words = ['public/jobs/tide-ledger.json', '--to', 'pdf,svg,dxf', '--address', address, '--out', folder];
    for (const more of [['--sheets', 'template,bench'], ['--mirrored']])
      expect(runProcess('sheets', [...words, ...more]).stderr).toBe('');
    for (const [name, bytes] of saved)
      expect([name, readFileSync(join(folder, name)).equals(bytes)]).toEqual([name, true]);
  } finally {
    remove();
  }
});
