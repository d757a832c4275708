import type { CDPSession, Page } from '@playwright/test';
import { isWholeProof, proofSize } from '../proof/proofSize.ts';
import { expect, openCard, openExample, stripSettles, test } from './bench.ts';

/** Edits, in two halves; the first also fills what keeps a bounded number of states, as undo and the caches of the model. */
const EDITS = proofSize(2000, 60);

/** What the page holds once its rubbish is cleared away. */
async function held(page: Page, session: CDPSession) {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  return {
    listeners: of('JSEventListeners'),
    nodes: of('Nodes'),
    heap: of('JSHeapUsedSize') / 1e6,
    workers: page.workers().length,
  };
}

test(`${EDITS} edits leave no listener, worker or part of the page behind, and the memory level`, async ({ bench }) => {
  test.slow();
  const session = await bench.context().newCDPSession(bench);
  await session.send('Performance.enable');
  await openExample(bench, 'choir book');
  const width = (await openCard(bench, 'book')).getByLabel('Width', { exact: true });
  const edit = async (count: number): Promise<void> => {
    for (let i = 0; i < count; i++) {
      await width.fill(`${140 + (i % 40)}`);
      if (i % 5 === 4) await bench.keyboard.press('Control+z');
    }
    await width.fill('151');
    await stripSettles(bench);
  };
  await edit(EDITS / 2);
  const before = await held(bench, session);
  await edit(EDITS / 2);
  const now = await held(bench, session);
  if (isWholeProof) console.log(JSON.stringify({ edits: EDITS, before, now }));
  expect(now.workers).toBe(before.workers);
  // An edit that left one of each behind would add as many as there were edits.
  const slack = EDITS / 4;
  expect(now.listeners - before.listeners).toBeLessThan(slack);
  expect(now.nodes - before.nodes).toBeLessThan(slack);
  if (isWholeProof) expect(now.heap).toBeLessThan(1.2 * before.heap);
});
