import { describe, expect, test } from 'vitest';
import {
  changesSince,
  dayOf,
  END,
  type KeptProgress,
  keptSchema,
  type PrintedStep,
  progressKeys,
  progressOf,
  saidBy,
  shownStep,
  withProgress,
  withSaid,
  withTicksOfBefore,
} from '../../../../src/app/making/steps/progress.ts';
import { type CoverDesign, coverDesign, EXAMPLE_JOBS, printer } from '../../../../src/core/index.ts';
import { orderOfWork } from '../../../../src/output/benchSheet/orderOfWork.ts';
import { workSource } from '../../../../src/output/benchSheet/workSource.ts';
import { defined } from '../../../defined.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';

const { document } = nth(EXAMPLE_JOBS, 0);
const designOf = (change: object = {}): CoverDesign => coverDesign(soundJob({ ...document, ...change }));
const stepsOf = (design: CoverDesign): readonly PrintedStep[] => {
  const source = workSource(design);
  const inches = orderOfWork(source, printer('in'));
  return orderOfWork(source, printer('mm')).map((mm, i) => ({ mm, in: nth(inches, i) }));
};
const stepOf = (design: CoverDesign, id: string): PrintedStep =>
  defined(stepsOf(design).find(({ mm }) => mm.id === id));
const saidAt = (id: string): ReturnType<typeof saidBy> => saidBy(stepOf(designOf(), id));
/** What the browser kept, as it is read. */
const keptSchemaOf = (...jobs: readonly object[]): KeptProgress => keptSchema.parse({ jobs });
const pockets = { pockets: { depth_mm: 70 } };

describe('a done step', () => {
  test('has not changed while the job is the same, or while only its price or name is another', () => {
    for (const change of [{}, { name: 'Another' }, { rates: { prices: { hour: 30 } } }])
      for (const step of stepsOf(designOf(change)))
        expect(changesSince(saidAt(step.mm.id), step, 'mm'), step.mm.id).toEqual([]);
  });

  test('says each figure that is another now, with the figure that it had, in the unit of the job', () => {
    const [before, now] = [designOf(), designOf(pockets)];
    expect(now.pieces.pocketDepth).not.toBe(before.pieces.pocketDepth);
    const changes = (units: 'mm' | 'in'): string[] => changesSince(saidAt('assemble'), stepOf(now, 'assemble'), units);
    expect(changes('mm')).toEqual([`Pocket depth: 70 mm, was ${printer('mm').size(before.pieces.pocketDepth)}.`]);
    expect(changes('in')).toEqual([
      `Pocket depth: ${printer('in').size(70)}, was ${printer('in').size(before.pieces.pocketDepth)}.`,
    ]);
  });

  test('keeps silent where the change is to another step', () => {
    expect(changesSince(saidAt('measure'), stepOf(designOf(pockets), 'measure'), 'mm')).toEqual([]);
    expect(changesSince(saidAt('cut'), stepOf(designOf(pockets), 'cut'), 'mm')).not.toEqual([]);
  });

  test('says a figure that is new or no longer there, and instructions that are others', () => {
    const strapped = stepOf(designOf({ construction: { strap: {} } }), 'cut');
    expect(changesSince(saidAt('cut'), strapped, 'mm')).toEqual([
      expect.stringMatching(/^Closure strap: .* mm, new\.$/),
    ]);
    expect(changesSince(saidBy(strapped), stepOf(designOf(), 'cut'), 'mm')).toEqual([
      expect.stringMatching(/^Closure strap: .* mm no longer\.$/),
    ]);
    const step = stepOf(designOf(), 'finish');
    expect(changesSince({ ...saidBy(step), words: 'Otherwise.' }, step, 'mm')).toEqual([
      'The instructions have changed: read them again.',
    ]);
  });
});

describe('progress', () => {
  const none: KeptProgress = { jobs: [] };
  const said = saidAt('cut');

  test('of one job is not that of another', () => {
    const [one, other] = [progressKeys('1', 'Choir book'), progressKeys('2', 'Choir book')];
    const kept = withProgress(none, one, { at: 'cut', done: { measure: said }, isInJob: true });
    expect(progressOf(kept, one)).toMatchObject({ at: 'cut', done: { measure: said } });
    expect(progressOf(kept, other)).toEqual({ at: null, done: {}, isInJob: true });
  });

  test('of a job that is put on the shelf goes with it', () => {
    const kept = withProgress(none, progressKeys(undefined, 'Choir book'), { at: 'cut', done: {}, isInJob: true });
    const shelved = progressKeys('1', 'Choir book');
    expect(progressOf(kept, shelved).at).toBe('cut');
    const moved = withProgress(kept, shelved, { at: 'edges', done: {}, isInJob: true });
    expect(moved.jobs.map(({ key, at }) => [key, at])).toEqual([['shelf:1', 'edges']]);
  });

  test('of a job that is renamed before it has a place stays with it', () => {
    const [before] = progressKeys(undefined, 'Choir book');
    const kept = withProgress(none, [defined(before)], { at: 'cut', done: {}, isInJob: true });
    for (const id of [undefined, '1']) {
      const renamed = progressKeys(id, 'Hymns', before);
      expect(progressOf(kept, renamed).at).toBe('cut');
      const { jobs } = withProgress(kept, renamed, { at: 'cut', done: {}, isInJob: true });
      expect(jobs.map(({ key }) => key)).toEqual([id === undefined ? 'name:Hymns' : 'shelf:1']);
    }
  });

  test('is kept of the 40 jobs worked last', () => {
    let kept = none;
    for (let i = 0; i < 45; i++)
      kept = withProgress(kept, progressKeys(String(i), ''), { at: 'cut', done: {}, isInJob: true });
    expect(kept.jobs).toHaveLength(40);
    expect(progressOf(kept, progressKeys('44', '')).at).toBe('cut');
    expect(progressOf(kept, progressKeys('4', '')).at).toBeNull();
  });

  test('shows the step that was left, by its name, wherever it has moved to', () => {
    const [left, made] = [{ at: 'assemble' }, { measure: '2026-11-26' }];
    expect(shownStep(left, made, ['measure', 'cut', 'assemble'])).toBe(2);
    expect(shownStep(left, made, ['measure', 'cut', 'fittings', 'assemble'])).toBe(3);
  });

  test('shows the first step that is not done where the one left is gone, and the end where all are done', () => {
    const [left, made] = [{ at: 'lace' }, { measure: null }];
    expect(shownStep(left, made, ['measure', 'cut', 'stitch'])).toBe(1);
    expect(shownStep(left, made, ['measure'])).toBe(1);
    expect(shownStep({ at: END }, {}, ['measure', 'cut'])).toBe(2);
    expect(shownStep({ at: null }, {}, ['measure', 'cut'])).toBe(0);
  });

  test('that an earlier version kept gives the job its ticks once, without a day, beside those that it has', () => {
    const ids = ['measure', 'cut', 'lace'];
    const { jobs } = keptSchemaOf({ key: 'shelf:1', at: 'lace', done: { measure: said, cut: said, stitch: said } });
    const before = progressOf({ jobs }, ['shelf:1']);
    expect(withTicksOfBefore({}, before, ids)).toEqual({ measure: null, cut: null });
    expect(withTicksOfBefore({ cut: '2026-11-26' }, before, ids)).toEqual({ measure: null, cut: '2026-11-26' });
    expect(withTicksOfBefore({ cut: '2026-11-26', measure: null }, before, ids)).toBeNull();
    // A tick that is taken away since stays away.
    expect(withTicksOfBefore({}, { ...before, isInJob: true }, ids)).toBeNull();
    expect(withTicksOfBefore({}, withSaid(before, 'cut', said), ids)).toBeNull();
  });

  test('has what a done step said beside that of the others', () => {
    const left = { at: 'cut', done: { measure: said }, isInJob: true };
    expect(withSaid(left, 'cut', said)).toEqual({ at: 'cut', done: { measure: said, cut: said }, isInJob: true });
  });
});

test('a day is that of the calendar where the maker is, a minute before midnight and a minute after', () => {
  expect(dayOf(new Date(2026, 10, 26, 23, 59))).toBe('2026-11-26');
  expect(dayOf(new Date(2026, 10, 27, 0, 1))).toBe('2026-11-27');
  expect(dayOf(new Date(2027, 0, 3, 12))).toBe('2027-01-03');
});
