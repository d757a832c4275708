import { expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { leatherOfJob } from '../../../src/core/stock/leatherOfJob.ts';
import { openLeather } from '../../../src/core/stock/openLeather.ts';
import { shopKnowledge } from '../../../src/core/stock/shop.ts';
import { newerFigures, takeLeather } from '../../../src/core/stock/takeLeather.ts';

const parsed = (document: unknown) => {
  const result = parseJob(document);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.job;
};

const leather = (more: object = {}) => {
  const opened = openLeather({
    format: 'coverwright-leather',
    version: 1,
    name: 'Side',
    min_mm: 1.6,
    max_mm: 2,
    ...more,
  });
  if (!opened.ok) throw new Error(opened.issues[0]?.message);
  return opened.document;
};

const FOLD = { thickness_mm: 1.8, fold_mm: 5.04 };
const tide = EXAMPLE_JOBS[0].document;

test('a job that has taken a leather differs in nothing from it, until the leather is better known', () => {
  const first = { id: 'a', revision: 1, leather: leather() };
  const taken = patched(tide, takeLeather('outside', first, shopKnowledge([first.leather]), parsed(tide)));
  const job = parsed(taken);
  expect(job.leather.outside).toMatchObject({ min_mm: 1.6, max_mm: 2, taken: { id: 'a', revision: 1, name: 'Side' } });
  expect(newerFigures(takeLeather('outside', first, shopKnowledge([first.leather]), job), job)).toEqual([]);

  // Another revision that says the same of it.
  const noted = { ...first, revision: 2, leather: { ...first.leather, notes: 'north side' } };
  expect(newerFigures(takeLeather('outside', noted, shopKnowledge([noted.leather]), job), job)).toEqual([]);

  const tested = {
    ...first,
    revision: 3,
    leather: leather({ callipered_mm: [1.7, 1.9], tests: { folds: [FOLD, FOLD, FOLD] } }),
  };
  const newer = newerFigures(takeLeather('outside', tested, shopKnowledge([tested.leather]), job), job);
  const of = (path: string) => newer.find((figure) => figure.path === path);
  expect(of('leather.outside.min_mm')).toMatchObject({ before: 1.6, after: 1.7 });
  expect(of('leather.outside.max_mm')).toMatchObject({ before: 2, after: 1.9 });
  // F = 2 t (1 + ratio): 5.04 over 3.6 is 1.4.
  expect(of('leather.outside.bendRatio')).toMatchObject({ before: 0.2, after: expect.closeTo(0.4, 1) });
  expect(of('doubts.leather.outside.bendRatio')).toMatchObject({ before: undefined, after: { from: 'measured' } });
  expect(newer.some(({ path }) => path.endsWith('.taken'))).toBe(false);
});

test('a pocket that takes a leather of its own gets one, and a lining that was not there', () => {
  const own = { id: 'a', revision: 1, leather: leather({ min_mm: 0.8, max_mm: 1, colour: '#101010' }) };
  for (const piece of ['pocket', 'lining'] as const) {
    const job = parsed(patched(tide, takeLeather(piece, own, shopKnowledge([own.leather]), parsed(tide))));
    expect(job.leather[piece]).toMatchObject({ min_mm: 0.8, max_mm: 1, taken: { id: 'a' } });
    expect(job.finish[piece]?.colour).toBe('#101010');
    expect(job.leather.outside.taken).toBeNull();
  }
});

test('the leather of a job is kept as it was bought, and a job that takes it back keeps its sizes', () => {
  const job = parsed(tide);
  const kept = { id: 'a', revision: 1, leather: leatherOfJob(job, 'outside', 'x'.repeat(300)) };
  expect(openLeather(JSON.parse(JSON.stringify(kept.leather)))).toEqual({ ok: true, document: kept.leather });
  const { min_mm, max_mm } = job.leather.outside;
  expect(kept.leather).toMatchObject({ min_mm, max_mm, colour: job.finish.outside.colour, temper: 'medium' });
  const sizes = newerFigures(takeLeather('outside', kept, shopKnowledge([kept.leather]), job), job).map(
    ({ path }) => path,
  );
  expect(sizes.filter((path) => /min_mm|max_mm|bendRatio$|colour/.test(path))).toEqual([]);
});
