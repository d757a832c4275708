import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { PNG } from 'pngjs';
import { build, type Rolldown } from 'vite';
import type { openArtwork } from '../../src/app/worker/openArtwork.ts';
import type { ReadArtwork } from '../../src/artwork/readArtwork.ts';
import { readArtworkLines } from '../../src/core/index.ts';
import { ELSEWHERE, HOSTILE_FAMILIES, hostileDrawing, PAYLOAD } from '../artwork/hostileDrawings.ts';
import { expect, openExample, test } from './bench.ts';

type Reader = { openArtwork: typeof openArtwork };

/** The reader and its worker as they are built for the page, by file name. */
async function builtReader(): Promise<Map<string, string>> {
  const output = (await build({
    configFile: false,
    logLevel: 'error',
    base: './',
    worker: { format: 'es' },
    build: {
      write: false,
      target: 'es2022',
      rolldownOptions: {
        input: join(import.meta.dirname, 'artworkReader.ts'),
        output: { entryFileNames: 'assets/artworkReader.js' },
      },
    },
  })) as Rolldown.RolldownOutput;
  return new Map(output.output.map((file) => [file.fileName, file.type === 'chunk' ? file.code : String(file.source)]));
}

let files: Map<string, string>;
test.beforeAll(async () => {
  files = await builtReader();
});

/** Puts the reader into an open page, under the page's own security policy. */
async function loadReader(page: Page): Promise<void> {
  for (const [name, body] of files)
    await page.route(`**/${name}`, (route) => route.fulfill({ body, contentType: 'text/javascript' }));
  await page.addScriptTag({ url: 'assets/artworkReader.js', type: 'module' });
  await page.waitForFunction(() => 'openArtwork' in window);
}

/** Reads a file as if the maker had chosen it. */
const read = (page: Page, name: string, bytes: Uint8Array, as: 'lines' | 'picture' = 'lines'): Promise<ReadArtwork> =>
  page.evaluate(
    ([file, base64, use]) => {
      const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      return (window as unknown as Reader).openArtwork(new File([content], file), { as: use });
    },
    [name, Buffer.from(bytes).toString('base64'), as] as const,
  );

test('hostile files chosen by the maker: nothing runs, nothing is fetched, the job stays as it is', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  await loadReader(bench);
  const requests: string[] = [];
  bench.on('request', (request) => requests.push(request.url()));
  const dialogs: string[] = [];
  bench.on('dialog', async (dialog) => {
    dialogs.push(dialog.message());
    await dialog.dismiss();
  });
  const kept = () =>
    bench.evaluate(() => JSON.stringify(Object.entries(localStorage).filter(([key]) => /job/.test(key))));
  const before = await kept();
  for (let index = 0; index < HOSTILE_FAMILIES; index++) {
    const { name, file, bytes, outcome } = hostileDrawing(index);
    const answer = await read(bench, file, bytes, index % 3 === 0 ? 'picture' : 'lines');
    if (outcome !== 'either') expect(answer.ok ? 'taken' : 'refused', name).toBe(outcome);
    const said = JSON.stringify(answer.ok ? [{ ...answer.artwork, name: '' }, answer.leftOut] : answer.issue);
    expect(said.includes(PAYLOAD) || said.includes(ELSEWHERE), name).toBe(false);
    if (!answer.ok) expect(answer.issue.words, name).toMatch(/^The drawing [^<>]+; allowed: [^<>]+\. [A-Z][^<>]+\.$/);
  }
  // The page fetches its own letters for print a moment after it has begun.
  expect(requests.filter((url) => !/\/assets\/(artwork|DejaVuSansCondensed)/.test(url))).toEqual([]);
  expect(dialogs).toEqual([]);
  expect(await bench.evaluate((name) => name in window, PAYLOAD)).toBe(false);
  expect(await kept()).toBe(before);
});

test('a drawing has the size and the place that the browser draws it with', async ({ bench }) => {
  await loadReader(bench);
  const body =
    '<g transform="rotate(20) skewX(10)"><rect x="20" y="-10" width="30" height="12" rx="4"/><g transform="translate(30 5) scale(.7 1.2)">' +
    '<path d="M0 0c10-20 30 0 20 10s-5 20 10 15t5 4q4 4-10 6a9 4 30 1 0 12 9"/></g></g><symbol id="s" viewBox="0 0 4 2"><ellipse cx="2" cy="1" rx="2" ry="1"/></symbol>' +
    '<use href="#s" x="10" y="50" width="30" height="30"/><svg x="60" y="50" width="20" height="30" viewBox="0 0 10 10"><circle cx="5" cy="5" r="5"/></svg>';
  const text = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-20 -20 140 140" width="140" height="140">${body}</svg>`;
  const answer = await read(bench, 'shapes.svg', new TextEncoder().encode(text));
  if (!answer.ok || answer.artwork.kind !== 'lines') throw new Error(JSON.stringify(answer));
  // The browser's own lengths, and its own matrices from each shape to the page.
  const drawn = await bench.evaluate((markup) => {
    const holder = document.createElement('div');
    holder.innerHTML = markup;
    document.body.prepend(holder);
    const root = holder.querySelector('svg')!;
    const toPage = root.getScreenCTM()!.inverse();
    const shapes = [...root.querySelectorAll<SVGGeometryElement>('rect, path, circle')];
    const found = shapes.map((shape) => {
      const matrix = toPage.multiply(shape.getScreenCTM()!);
      const total = shape.getTotalLength();
      return Array.from({ length: 2001 }, (_, i) => {
        const { x, y } = shape.getPointAtLength((total * i) / 2000).matrixTransform(matrix);
        return [x, y] as const;
      });
    });
    const use = root.querySelector('use')!.getBoundingClientRect();
    const corner = new DOMPoint(use.x, use.y).matrixTransform(toPage);
    holder.remove();
    return { found, use: [corner.x, corner.y, use.width, use.height] as const };
  }, text);
  const lines = readArtworkLines(answer.artwork.lines);
  if ('fault' in lines) throw new Error(lines.fault.got);
  const all = drawn.found.flat();
  const left = Math.min(...all.map(([x]) => x), drawn.use[0]);
  const right = Math.max(...all.map(([x]) => x), drawn.use[0] + drawn.use[2]);
  const top = Math.min(...all.map(([, y]) => y));
  const perUnit = (right - left) / answer.artwork.width;
  const placed = lines.polylines.map((line) => line.map(([x, y]) => [left + x * perUnit, top + y * perUnit] as const));
  // Drawn in the order rect, path, use, circle.
  const [rect, path, ellipse, circle] = placed;
  for (const [points, line] of [
    [drawn.found[0], rect],
    [drawn.found[1], path],
    [drawn.found[2], circle],
  ] as const)
    for (const [x, y] of points!) expect(Math.min(...distances([x, y], line!))).toBeLessThan(0.05);
  const [x, y, width, height] = drawn.use;
  for (const [ex, ey] of ellipse!)
    expect(Math.hypot((ex - x - width / 2) / (width / 2), (ey - y - height / 2) / (height / 2))).toBeCloseTo(1, 2);
});

/** Distances of a point to the chords of a line. */
const distances = ([px, py]: readonly [number, number], line: readonly (readonly [number, number])[]): number[] =>
  line.slice(1).map(([bx, by], i) => {
    const [ax, ay] = line[i]!;
    const [dx, dy] = [bx - ax, by - ay];
    const share = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
    return Math.hypot(px - ax - share * dx, py - ay - share * dy);
  });

test('a picture is traced and laid as it is by the browser, transparent parts left as they are', async ({ bench }) => {
  await loadReader(bench);
  const picture = new PNG({ width: 1000, height: 500 });
  for (let i = 0; i < 500_000; i++) {
    const [x, y] = [i % 1000, Math.floor(i / 1000)];
    // A black disc on nothing at all, beside a black square that cannot be seen.
    const isDisc = Math.hypot(x - 300, y - 250) < 150;
    picture.data.set([0, 0, 0, isDisc ? 255 : 0], 4 * i);
  }
  const bytes = PNG.sync.write(picture);
  const traced = await read(bench, 'disc.png', bytes);
  if (!traced.ok || traced.artwork.kind !== 'lines') throw new Error(JSON.stringify(traced));
  expect(traced.artwork.width / traced.artwork.height).toBeCloseTo(1, 1);
  expect(traced.artwork.lines.match(/m/g)).toHaveLength(1);
  const laid = await read(bench, 'disc.png', bytes, 'picture');
  expect(laid).toMatchObject({ ok: true, artwork: { kind: 'picture', width: 512, height: 256 } });
});

test('a JPEG is turned as its camera says', async ({ bench }) => {
  await loadReader(bench);
  const jpeg = await bench.evaluate(async () => {
    const canvas = new OffscreenCanvas(64, 32);
    const context = canvas.getContext('2d')!;
    context.fillStyle = '#fff';
    context.fillRect(0, 0, 64, 32);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
  });
  // Exif (CIPA DC-008, 4.6): one entry in directory 0, orientation 6, which is a quarter turn.
  const entry = [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0];
  const exif = [...new TextEncoder().encode('Exif\0\0MM'), 0, 42, 0, 0, 0, 8, 0, 1, ...entry, 0, 0, 0, 0];
  const turned = Uint8Array.from([...jpeg.slice(0, 2), 0xff, 0xe1, 0, exif.length + 2, ...exif, ...jpeg.slice(2)]);
  const upright = await read(bench, 'a.jpg', Uint8Array.from(jpeg), 'picture');
  expect(upright).toMatchObject({ ok: true, artwork: { width: 64, height: 32 } });
  expect(await read(bench, 'a.jpg', turned, 'picture')).toMatchObject({ ok: true, artwork: { width: 32, height: 64 } });
});
