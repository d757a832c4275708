import type { CDPSession, Page } from '@playwright/test';
import { nth } from '../nth.ts';
import { proofSize } from '../proof/proofSize.ts';
import { expect, openCard, scenesAreDrawn, stripSettles, test } from './bench.ts';

/** One round of edits of all kinds: figures, choices, undo and redo, the picture turned; it ends on the job it began with. */
const ROUND: readonly ((page: Page) => Promise<void>)[] = [
  type('book.width_mm', '150'),
  type('book.height_mm', '215'),
  choose('seam.method', 'stitching'),
  type('book.thickness_mm', '34'),
  press('Control+z'),
  press('Control+Shift+z'),
  type('leather.outside', '2-3 oz'),
  choose('book.spine.shape', 'rounded'),
  choose('finish.edge', 'painted'),
  open('1.5'),
  type('pattern.outsideHeight_mm', '235'),
  type('book.width_mm', '9000'),
  type('book.width_mm', '165'),
  type('book.height_mm', '240'),
  choose('seam.method', 'lacing'),
  type('book.thickness_mm', '28'),
  type('leather.outside', '4-5 oz'),
  choose('book.spine.shape', 'flat'),
  choose('finish.edge', 'burnished'),
  open('0'),
  type('pattern.outsideHeight_mm', ''),
];

function type(path: string, text: string) {
  return (page: Page) => page.locator(`form input[data-path="${path}"]`).fill(text);
}

function choose(path: string, value: string) {
  return (page: Page) => page.locator(`form [data-path="${path}"] input[value="${value}"]`).check();
}

function press(keys: string) {
  return (page: Page) => page.keyboard.press(keys);
}

function open(radians: string) {
  return (page: Page) => page.getByLabel('Open the book', { exact: true }).fill(radians);
}

const rounds = proofSize(96, 2);

/** What the page holds. */
interface Held {
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly workers: number;
  readonly gpu: number;
}

/**
 * How much the second half may add, as a share; of workers and of objects at the graphics driver nothing. A field that is typed into
 * has an undo of the browser's own, which keeps one or two of its old texts for each entry that is emptied, 6 % in a thousand.
 */
const MOST_GROWTH = { heap: proofSize(0.05, 0.1), nodes: 0.08, listeners: 0.02 };

/** In the page, before anything of it runs: counts the workers and the driver's objects that are alive. */
function countHeld(): void {
  const held = { workers: 0, gpu: 0 };
  Object.assign(window, { held });
  const own = window.Worker;
  window.Worker = class extends own {
    #isAlive = true;
    constructor(...words: ConstructorParameters<typeof Worker>) {
      super(...words);
      held.workers++;
    }
    override terminate(): void {
      if (this.#isAlive) held.workers--;
      this.#isAlive = false;
      super.terminate();
    }
  };
  const gl = WebGL2RenderingContext.prototype as unknown as Record<string, (...values: unknown[]) => object | null>;
  const alive = new WeakSet<object>();
  for (const kind of [
    'Buffer',
    'Texture',
    'Program',
    'Shader',
    'VertexArray',
    'Framebuffer',
    'Renderbuffer',
    'Sampler',
  ]) {
    const [create, remove] = [nthOf(`create${kind}`), nthOf(`delete${kind}`)];
    gl[`create${kind}`] = function (this: unknown, ...values) {
      const made = create.apply(this, values);
      if (made !== null) {
        alive.add(made);
        held.gpu++;
      }
      return made;
    };
    gl[`delete${kind}`] = function (this: unknown, ...values) {
      const [gone] = values as [object | null];
      if (gone !== null && alive.delete(gone)) held.gpu--;
      return remove.apply(this, values);
    };
  }
  function nthOf(name: string) {
    const own = gl[name];
    if (own === undefined) throw new Error(`no ${name}`);
    return own;
  }
}

/** What the page holds at rest, after the collector. */
async function heldAtRest(page: Page, session: CDPSession): Promise<Held> {
  await stripSettles(page);
  await scenesAreDrawn(page);
  let last: Held | null = null;
  // A part that lags, or a worker that closes, may still be on its way.
  for (let alike = 0, tries = 0; alike < 2 && tries < 20; tries++) {
    await page.waitForTimeout(300);
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
    const counted = await page.evaluate(() => (window as unknown as { held: Pick<Held, 'workers' | 'gpu'> }).held);
    const now: Held = { heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners'), ...counted };
    const isAlike = last !== null && (['nodes', 'workers', 'gpu'] as const).every((what) => last?.[what] === now[what]);
    alike = isAlike ? alike + 1 : 0;
    last = now;
  }
  if (last === null) throw new Error('never at rest');
  return last;
}

test.describe('with the scene at work', () => {
  test.use({ look: 'unfilled' });

  test(`${rounds * ROUND.length} edits of all kinds leave heap, nodes, listeners, workers and the driver's objects level`, async ({
    bench: page,
  }) => {
    await page.addInitScript(countHeld);
    await page.reload();
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    for (const card of ['book', 'leather', 'seam', 'cut'] as const) await openCard(page, card);
    await scenesAreDrawn(page);
    const held: Held[] = [];
    for (let round = 1; round <= rounds; round++) {
      for (const edit of ROUND) {
        await edit(page);
        await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(drawn)));
      }
      if (round === 1 || round === Math.ceil(rounds / 2) || round === rounds) {
        held.push(await heldAtRest(page, session));
        console.log(`after ${round * ROUND.length} edits: ${JSON.stringify(held.at(-1))}`);
      }
    }
    const [half, whole] = [nth(held, held.length - 2), nth(held, held.length - 1)];
    expect(whole.workers).toBeLessThanOrEqual(half.workers);
    expect(whole.gpu).toBeLessThanOrEqual(half.gpu);
    expect(half.gpu).toBeGreaterThan(20);
    for (const [what, share] of Object.entries(MOST_GROWTH)) {
      const [before, after] = [half[what as keyof Held], whole[what as keyof Held]];
      expect(after / before - 1, `${what}: ${before}, then ${after}`).toBeLessThanOrEqual(share);
    }
  });
});
