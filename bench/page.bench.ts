// What the page does for a key press in a measure field and for a dragged slider, read from Chromium's own trace.
//
// `answer` is the main thread's time from the key press to the new sentences of the cover in the page, `frame` the
// style, layout and paint that show them, `later` what follows until the next key. The scene's frames stand apart, for
// without a graphics card they are drawn by the processor: `scene` is the main thread's part of them, `GL` the drawing
// process's, by the wall. The other times are by the thread's clock, which stops while other programs have the
// processor; `wall` is the answer's time by the wall.

import { type Browser, type CDPSession, chromium, type Locator, type Page } from '@playwright/test';
import { preview } from 'vite';
import config from '../playwright.config.ts';
import { chooseBrowser } from '../scripts/chromium.mjs';
import { freshBuild } from '../scripts/freshBuild.mjs';
import { EXAMPLE_JOBS } from '../src/core/index.ts';
import { goToPlace, openCard, openDocument, openExample, openPart } from '../tests/browser/bench.ts';
import { withoutDrawingContext } from '../tests/browser/webGl.ts';
import { defined } from '../tests/defined.ts';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { quantile, type Trace, type TraceEvent, traced } from './pageTrace.ts';

const BOOKS = process.env.BOOKS?.split(',') ?? ['tide ledger', 'choir book', 'shore guide'];
const FIELDS = ['book.width_mm', 'book.thickness_mm'];
const KEYS = 24;
/** Rest after a key, ms: one lets everything that follows from it end, the other is fast typing. */
const PACES = { 'key by key': 700, 'ten keys a second': 100 };
const BUDGET = { key: 16, drag: 50 };
/** SLOW=4 gives the page a processor four times slower, by pauses: only the wall times show it. */
const SLOW = Number(process.env.SLOW ?? 1);
/** How far a tab of the strip is dragged, px. */
const TAB_WAY = 90;
const DRAG_STEPS = 40;

const answers: Record<string, object> = {};
const drags: Record<string, object> = {};

await freshBuild();
const { CHROMIUM_PATH } = { ...process.env, ...chooseBrowser() };
const server = await preview({
  logLevel: 'error',
  preview: { host: '127.0.0.1', port: Number(process.env.PORT), open: false },
});
const browser = await chromium.launch({
  ...config.use?.launchOptions,
  executablePath: CHROMIUM_PATH || undefined,
});
try {
  for (const scene of ['no WebGL', '3D'] as const) {
    // Without a graphics card the scene takes most of the time of this.
    if (scene === '3D' && process.env.SCENE === 'none') continue;
    await measure(browser, scene);
  }
} finally {
  await browser.close();
  await server.close();
}
console.log(`\nMain thread, ms a key press, medians; budget: median of answer + frame ${BUDGET.key}`);
console.table(answers);
console.log(`Tasks of the main thread while a slider is dragged, ms; budget: none over ${BUDGET.drag}`);
console.table(drags);
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);

async function measure(on: Browser, scene: '3D' | 'no WebGL'): Promise<void> {
  const page = await on.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  if (scene === 'no WebGL') await page.addInitScript(withoutDrawingContext);
  await page.goto(nth(defined(server.resolvedUrls).local, 0));
  await page.evaluate(markAnswers);
  const session = await page.context().newCDPSession(page);
  if (SLOW > 1) await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
  for (const book of BOOKS) {
    await openExample(page, book);
    for (const [pace, rest] of Object.entries(PACES)) {
      const trace = await traced(session, async () => {
        await openCard(page, 'book');
        for (const path of FIELDS) await type(page, page.locator(`form [data-path="${path}"]`), rest);
      });
      answers[`${book}, ${pace}, ${scene}`] = keyFigures(trace);
    }
    for (const slider of ['Open the book', 'Making']) {
      const trace = await traced(session, () => drag(page, page.getByRole('slider', { name: slider, exact: true })));
      drags[`${book}, ${slider}, ${scene}`] = dragFigures(trace);
    }
    await page.getByLabel('Open the book', { exact: true }).fill('0');
    await goToPlace(page, 'Strips');
    const seam = page.locator('.fore-edge-detail .handle').nth(1).locator('.handle-tab');
    const trace = await traced(session, () => drag(page, seam, -TAB_WAY));
    drags[`${book}, tab of the seam, ${scene}`] = dragFigures(trace);
    await goToPlace(page, 'Cover');
  }
  if (scene === 'no WebGL') await measureTooled(page, session);
  await page.close();
}

/** The same of a job with a drawing of 20,000 points: a measure, a figure of the drawing, and the drawing dragged. */
async function measureTooled(page: Page, session: CDPSession): Promise<void> {
  const job = tooledJob();
  await openDocument(page, job);
  const key = async (name: string, field: Locator): Promise<void> => {
    answers[name] = keyFigures(await traced(session, () => type(page, field, PACES['key by key'])), 1);
  };
  await openCard(page, 'book');
  await key(`${job.name}, width of the book`, page.locator('form [data-path="book.width_mm"]'));
  await openPart(page, 'Tooling');
  const drawing = page.locator('.design-mark').last();
  await drawing.focus();
  await key(`${job.name}, above the centre`, page.locator('[data-path="tooling.designs.1.y_mm"]'));
  await key(`${job.name}, width of the drawing`, page.locator('[data-path="tooling.designs.1.width_mm"]'));
  const way = 60;
  const trace = await traced(session, () => drag(page, drawing.locator('.design-target'), way));
  drags[`${job.name}, the drawing`] = dragFigures(trace);
}

/** The choir book with a border and a drawing of 200 wound lines of 100 points, 150 kB. */
function tooledJob() {
  const lines = Array.from({ length: 200 }, (_, line) => {
    const [x, y] = [300 + 470 * (line % 20), 400 + 900 * Math.floor(line / 20)];
    const at = (i: number): [number, number] => [
      x + Math.round(2 * i * Math.cos(i / 3)),
      y + Math.round(4 * i * Math.sin(i / 3)),
    ];
    const steps = Array.from({ length: 99 }, (_, i) => {
      const [[fromX, fromY], [toX, toY]] = [at(i), at(i + 1)];
      return `${toX - fromX},${toY - fromY}`;
    });
    return `m${at(0).join()} ${steps.join(' ')}`;
  }).join(' ');
  const document = EXAMPLE_JOBS.map((example) => example.document).find(({ name }) => name === 'Choir book');
  const artwork = { id: 'wound', name: 'wound', kind: 'lines', width: 10_000, height: 10_000, lines };
  return {
    ...document,
    name: 'Tooled book',
    tooling: {
      designs: [
        { kind: 'border', area: 'front', lines: 2 },
        { kind: 'drawing', area: 'front', artwork: 'wound', width_mm: 90, y_mm: 12.25 },
      ],
      artworks: [artwork],
    },
  };
}

/** Types a figure's second decimal anew, again and again: every key press leaves a figure that stands for another job. */
async function type(page: Page, field: Locator, rest: number): Promise<void> {
  const whole = Number.parseInt(await field.inputValue(), 10);
  await field.fill(`${whole}.25`);
  await field.press('End');
  await page.waitForTimeout(1500);
  for (let i = 0; i < KEYS / 2; i++) {
    await page.keyboard.press(i % 2 === 0 ? 'Backspace' : String(3 + ((i >> 1) % 6)));
    await page.waitForTimeout(rest);
  }
}

/** Drags from the left end of a handle, over the whole of it or as far as is said, px. */
async function drag(page: Page, handle: Locator, way?: number): Promise<void> {
  await handle.scrollIntoViewIfNeeded();
  const { x, y, width, height } = defined(await handle.boundingBox());
  await page.mouse.move(x + 4, y + height / 2);
  await page.mouse.down();
  for (let i = 1; i <= DRAG_STEPS; i++) {
    await page.mouse.move(x + 4 + ((way ?? width - 8) * i) / DRAG_STEPS, y + height / 2);
    await page.waitForTimeout(40);
  }
  await page.mouse.up();
  await page.waitForTimeout(1000);
}

/** In the page: marks when, after a key press, what the cards say or the sheet of the tooling shows has changed. */
function markAnswers(): void {
  const pending = new Set<string>();
  window.addEventListener('keydown', () => pending.add('.card-said, .place-line, .face-sheet'), { capture: true });
  new MutationObserver((records) => {
    if (pending.size === 0) return;
    for (const { target } of records) {
      const element = target instanceof Element ? target : target.parentElement;
      for (const part of pending) if (element?.closest(part)) pending.delete(part);
    }
    if (pending.size === 0) performance.mark('answer');
  }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
}

/** @param fields in which keys were pressed */
function keyFigures(trace: Trace, fields = FIELDS.length): object {
  const keys = trace.dispatched('keydown');
  const marks = trace.main.filter(({ name }) => name === 'answer');
  const samples = keys.flatMap((key, i) => {
    const next = keys[i + 1];
    const task = trace.tasks.findLast(({ ts }) => ts <= key.ts) ?? key;
    const mark = marks.find(({ ts }) => ts > key.ts);
    // The last key ends the one before; the first only puts the caret where it belongs.
    if (next === undefined || mark === undefined || mark.ts > next.ts) return [];
    const committed = trace.named('Commit').find(({ ts }) => ts > mark.ts)?.ts ?? next.ts;
    const drawn = (event: TraceEvent) => event.ts >= mark.ts && event.ts <= Math.min(committed, next.ts);
    const scene = sum(trace.sceneFrames.filter(({ ts }) => ts >= task.ts && ts < next.ts).map(({ tdur }) => tdur));
    const answer = mark.tts - task.tts;
    const frame = sum(trace.rendering.filter(drawn).map(({ tdur }) => tdur));
    const later = next.tts - mark.tts - frame - scene;
    return [{ answer, frame, later, scene, gl: trace.drawingTime(key.ts, next.ts), wall: mark.ts - task.ts }];
  });
  if (samples.length < (fields * KEYS) / 4)
    throw new Error(`Only ${samples.length} of ${keys.length} key presses changed what the cards say.`);
  const column = (of: (sample: (typeof samples)[number]) => number) => samples.map((sample) => of(sample) / 1000);
  const median = (of: (sample: (typeof samples)[number]) => number) => ms(quantile(column(of), 0.5));
  const shown = column(({ answer, frame }) => answer + frame);
  return {
    keys: samples.length,
    'answer + frame': ms(quantile(shown, 0.5)),
    p95: ms(quantile(shown, 0.95)),
    answer: median(({ answer }) => answer),
    frame: median(({ frame }) => frame),
    wall: median(({ wall }) => wall),
    later: median(({ later }) => later),
    scene: median(({ scene }) => scene),
    GL: median(({ gl }) => gl),
  };
}

function dragFigures(trace: Trace): object {
  const from = nth(trace.dispatched('mousedown'), 0).ts;
  const frames = trace.sceneFrames.filter(({ ts }) => ts >= from);
  const tasks = trace.tasks
    .filter(({ ts }) => ts >= from)
    .map((task) => {
      const within = frames.filter(({ ts }) => ts >= task.ts && ts < task.ts + task.dur);
      return {
        wall: (task.dur - sum(within.map(({ dur }) => dur))) / 1000,
        own: (task.tdur - sum(within.map(({ tdur }) => tdur))) / 1000,
      };
    });
  const busy = tasks.map(({ own }) => own).filter((own) => own > 1);
  return {
    'longest task': ms(Math.max(...busy)),
    median: ms(quantile(busy, 0.5)),
    p95: ms(quantile(busy, 0.95)),
    'longest, wall': ms(Math.max(...tasks.map(({ wall }) => wall))),
    [`wall over ${BUDGET.drag}`]: tasks.filter(({ wall }) => wall > BUDGET.drag).length,
    'scene frames': frames.length,
    'longest frame': ms(Math.max(0, ...frames.map(({ tdur }) => tdur / 1000))),
    'longest frame, wall': ms(Math.max(0, ...frames.map(({ dur }) => dur / 1000))),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function ms(value: number): string {
  return value.toFixed(1);
}
