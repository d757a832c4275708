import { describe, expect, test } from 'vitest';
import { doubtOf } from '../../../src/core/doubt/doubtOf.ts';
import { DOUBT_PATHS, type DoubtPath } from '../../../src/core/job/doubtSchema.ts';
import { jobWith } from './jobWith.ts';

const of = (path: DoubtPath, job: Parameters<typeof jobWith>[0] = {}) => doubtOf(jobWith(job), path);
const measured = (u: number) => ({ u, distribution: 'normal', from: 'measured', with: '' });
const byRuler = (u: number) => ({ ...measured(u), with: 'ruler A' });
const assumed = (u: number) => ({ ...measured(u), from: 'assumed' });

/** Assumptions of this project; the standard deviation of an even spread of width w is w / sqrt 12 (JCGM 100:2008 4.3.7). */
describe('the default doubt', () => {
  test('of a length by ruler is 0.25 mm, over the boards 0.3 mm, and all grow with the reading error', () => {
    for (const path of [
      'book.width_mm',
      'book.height_mm',
      'book.measured.closedWrap_mm',
      'book.measured.rolledHalf_mm',
      'book.measured.openFlatWidth_mm',
    ] as const) {
      expect(of(path), path).toEqual(byRuler(0.25));
      expect(of(path, { book: { measured: { error_mm: 1 } } }).u, path).toBe(0.5);
      expect(of(path, { book: { measured: { error_mm: 0 } } }).u, path).toBe(0);
    }
    for (const path of ['book.thickness_mm', 'book.foreEdgeThickness_mm'] as const) {
      expect(of(path)).toEqual(byRuler(0.3));
      expect(of(path, { book: { measured: { error_mm: 1 } } }).u).toBe(0.6);
    }
  });

  test('of a board is 0.1 mm once typed, and 0.4 of 2.5 mm where it is usual for the kind', () => {
    const path = 'book.boardThickness_mm';
    expect(of(path, { book: { boardThickness_mm: 2.5 } })).toEqual(measured(0.1));
    expect(of(path)).toEqual({ ...assumed(0.4), from: 'usual' });
    // 0.16 of the 0.4 mm of a paperback's cover.
    expect(of(path, { book: { kind: 'paperback' } }).u).toBeCloseTo(0.064, 12);
    // Callipers are no worse for a poor ruler, and exact where every measure is.
    expect(of(path, { book: { boardThickness_mm: 2.5, measured: { error_mm: 2 } } }).u).toBe(0.1);
    expect(of(path, { book: { boardThickness_mm: 2.5, measured: { error_mm: 0 } } }).u).toBe(0);
  });

  test('of a rise is 0.5 mm measured, and 0.08 of the thickness estimated', () => {
    const round = (spine: object) => of('book.spine.rise_mm', { book: { spine: { shape: 'rounded', ...spine } } });
    expect(round({ rise_mm: 6 })).toEqual(measured(0.5));
    expect(round({})).toEqual(assumed(0.08 * 28));
    const poor = { measured: { error_mm: 1 } };
    expect(of('book.spine.rise_mm', { book: { ...poor, spine: { shape: 'rounded', rise_mm: 6 } } }).u).toBe(1);
    expect(of('book.cornerRadius_mm', { book: { ...poor, cornerRadius_mm: 6 } }).u).toBe(1);
  });

  test('of what is guessed is half of it', () => {
    expect(of('book.jointDip_mm', { book: { jointDip_mm: 3 } })).toEqual(assumed(1.5));
    expect(of('book.pageGive', { book: { pageGive: 0.1 } })).toEqual(assumed(0.05));
    expect(of('book.jointDip_mm')).toEqual({ ...assumed(0.5), from: 'usual' });
    const edge = (cornerRadius_mm: number) => of('book.cornerRadius_mm', { book: { cornerRadius_mm } });
    expect(edge(0.6)).toEqual(measured(0.3));
    expect(edge(4)).toEqual(measured(0.5));
  });

  test('of a leather is even over the range it is sold by, and 0.05 mm where callipers gave one figure', () => {
    const sold = { u: 0.5 / Math.sqrt(12), distribution: 'even', from: 'usual', with: '' };
    const leather = { pocket: { min_mm: 1, max_mm: 1.5 }, lining: { min_mm: 0.6, max_mm: 1.1 } };
    for (const path of ['leather.outside', 'leather.pocket', 'leather.lining'] as const) {
      expect(of(path, { leather }), path).toEqual({ ...sold, u: expect.closeTo(sold.u, 12) });
    }
    expect(of('leather.outside', { leather: { outside: { min_mm: 2, max_mm: 2 } } })).toEqual(measured(0.05));
    expect(of('leather.lining').u).toBe(0.05);
    expect(of('leather.outside.foldThickness_mm')).toEqual(measured(0.1));
    expect(of('leather.lining.foldThickness_mm')).toEqual(measured(0.1));
    expect(of('leather.outside.neutral')).toEqual(assumed(0.08));
    expect(of('leather.outside.bendRatio')).toEqual(assumed(0.1));
    expect(of('leather.pocket.bendRatio')).toEqual(assumed(0.1));
  });

  test('of a change of size is 0.2 % worked dry or tested, and 0.7 % otherwise', () => {
    for (const path of ['making.changeAlong', 'making.changeAcross'] as const) {
      expect(of(path)).toEqual(assumed(0.002));
      for (const state of ['cased', 'dyed', 'wet-formed']) {
        expect(of(path, { making: { state } })).toEqual(assumed(0.007));
        const key = path.slice('making.'.length);
        expect(of(path, { making: { state, [key]: 0 } })).toEqual(measured(0.002));
      }
    }
    // A test along says nothing of across.
    expect(of('making.changeAcross', { making: { state: 'cased', changeAlong: -0.01 } }).u).toBe(0.007);
  });

  test('of a margin is 0.2 mm at an edge, of a cut dimension 0.3 mm', () => {
    expect(of('seam.edgeMargin_mm')).toEqual(assumed(0.2));
    expect(of('pattern.outsideWidth_mm')).toEqual(assumed(0.3));
    expect(of('pattern.outsideHeight_mm')).toEqual(assumed(0.3));
  });
});

describe('the doubt that a job gives', () => {
  test('takes the place of the default, part by part', () => {
    for (const path of DOUBT_PATHS) {
      const usual = of(path);
      expect(of(path, { doubts: { [path]: { u: 0.03 } } }), path).toEqual({ ...usual, u: 0.03 });
      expect(of(path, { doubts: { [path]: { distribution: 'even' } } }), path).toEqual({
        ...usual,
        distribution: 'even',
      });
      expect(of(path, { doubts: { [path]: { with: 'tape B' } } }), path).toEqual({ ...usual, with: 'tape B' });
      expect(of(path, { doubts: { [path]: { u: 0 } } }).u, path).toBe(0);
    }
  });

  test('says of a board whether it is measured, which then has the doubt of callipers', () => {
    const board = (from: string, book = {}) =>
      of('book.boardThickness_mm', { book, doubts: { 'book.boardThickness_mm': { from } } });
    expect(board('measured')).toEqual(measured(0.1));
    expect(board('usual', { boardThickness_mm: 2.5 })).toEqual({ ...assumed(0.4), from: 'usual' });
  });
});
