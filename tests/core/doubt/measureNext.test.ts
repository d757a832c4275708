import { describe, expect, test } from 'vitest';
import { needsOverRange } from '../../../src/core/allowance/needs.ts';
import { isRiseEstimated } from '../../../src/core/book/rise.ts';
import { coverDoubt } from '../../../src/core/doubt/coverDoubt.ts';
import { doubtOf } from '../../../src/core/doubt/doubtOf.ts';
import { measureNext, wouldReach } from '../../../src/core/doubt/measureNext.ts';
import { sizedEase } from '../../../src/core/doubt/sizedEase.ts';
import { spareOf } from '../../../src/core/doubt/spare.ts';
import type { DoubtPath } from '../../../src/core/job/doubtSchema.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { normalQuantile } from '../../../src/core/math/normal.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { ledgerDesign, ledgerDocument } from './jobWith.ts';

describe('what to measure next', () => {
  test('promises the size that sizing again then saves, within a cut step', () => {
    const roomy = { loosest: { foreEdge_mm: 20, head_mm: 20, tail_mm: 20 }, pattern: { rounding_mm: 0.1 } };
    const design = ledgerDesign(roomy);
    const next = measureNext(design.job, design.doubt, design.pieces.outside);
    expect(next.map(({ path }) => path)).toContain('book.measured.closedWrap_mm');
    expect(next.map(({ saves }) => saves)).toEqual(next.map(({ saves }) => saves).toSorted((a, b) => b - a));
    // One condition decides once the other dimension is typed with room.
    for (const { path, of, saves, doubt } of next) {
      const job = soundJob(
        ledgerDocument({ ...roomy, ease: of === 'width' ? { head_mm: 9, tail_mm: 9 } : { foreEdge_mm: 12 } }),
      );
      const needs = needsOverRange(job);
      const sizeBy = (by: typeof doubt): number => {
        const { foreEdge_mm, head_mm, tail_mm } = sizedEase(job, needs, by);
        return of === 'width' ? 2 * foreEdge_mm : head_mm + tail_mm;
      };
      expect(Math.abs(sizeBy(design.doubt) - sizeBy(doubt) - saves), path).toBeLessThanOrEqual(0.1 + 1e-9);
    }
  });

  test('names for cased leather the shrink tests first, and reaches the share with the one that is enough', () => {
    const design = ledgerDesign({ making: { state: 'cased' } });
    const next = measureNext(design.job, design.doubt, design.pieces.outside);
    expect(nth(next, 0).path).toMatch(/^making\.change/);
    for (const each of next)
      if (wouldReach(design.job, design.needs, design.pieces.pocketDepth, each))
        expect(each.path).toMatch(/^making\.change|closedWrap/);
    const narrow = ledgerDesign({ making: { state: 'cased' }, leather: { outside: { min_mm: 1.6, max_mm: 2 } } });
    const helps = measureNext(narrow.job, narrow.doubt, narrow.pieces.outside).map((each) =>
      wouldReach(narrow.job, narrow.needs, narrow.pieces.pocketDepth, each),
    );
    expect(new Set(helps)).toEqual(new Set([true, false]));
    // Following it: the doubt with it is that of a job whose leather was tested.
    for (const { path, doubt } of next.filter((each) => each.path.startsWith('making.')))
      expect(doubt.covariance, path).toEqual(
        coverDoubt(
          soundJob(ledgerDocument({ making: { state: 'cased' }, doubts: { [path]: { u: 0.002 } } })),
        ).covariance.map((row) => row.map((value) => expect.closeTo(value, 12) as number)),
      );
  });

  /** Every measurement: what it leaves of the doubt of which input, and its words. */
  const measurements = (u: (path: DoubtPath) => number, isRiseEstimated: boolean) =>
    [
      ['leather.outside.bendRatio', 0.03, 'a hard fold of this leather, for its bend ratio'],
      ['leather.pocket.bendRatio', 0.03, 'a hard fold of the pocket leather'],
      ['leather.outside.neutral', 0.03, 'a test bend of this leather, for K'],
      ['making.changeAcross', 0.002, 'a shrink test across'],
      ['making.changeAlong', 0.002, 'a shrink test along'],
      ['leather.outside', 0.05, 'callipers on this leather'],
      ['leather.pocket', 0.05, 'callipers on the pocket leather'],
      ['leather.lining', 0.05, 'callipers on the lining'],
      ['book.boardThickness_mm', 0.1, 'callipers on a board'],
      ['book.thickness_mm', 0.1, 'callipers over both boards'],
      isRiseEstimated
        ? ['book.spine.rise_mm', 0.5, 'the rise of the spine, measured']
        : ['book.spine.rise_mm', u('book.spine.rise_mm') / Math.SQRT2, 'the rise of the spine, measured again'],
      // Half a reading error is what two joints share.
      ['book.measured.openFlatWidth_mm', 0.125, 'the width of the book lying open', 'book.jointDip_mm'],
      ['book.width_mm', u('book.width_mm') / Math.SQRT2, 'the width, measured again'],
      ['book.height_mm', u('book.height_mm') / Math.SQRT2, 'the height, measured again'],
    ] as const satisfies (readonly [DoubtPath, number, string, DoubtPath?])[];

  test('saves what the job with that doubt needs less, of width or height, and is named from 0.05 mm on', () => {
    const { book } = ledgerDocument();
    const rounded = { ...book, thickness_mm: 60 };
    const leather = {
      outside: { min_mm: 1.5, max_mm: 2.5 },
      pocket: { min_mm: 1, max_mm: 2 },
      lining: { min_mm: 0.5, max_mm: 1.5 },
    };
    const unknown = {
      'book.boardThickness_mm': { u: 0.6 },
      'book.height_mm': { u: 1 },
      'book.thickness_mm': { u: 1 },
    };
    const dip = { 'book.jointDip_mm': { u: 3 } };
    const [said, words] = [new Set<string>(), new Set<string>()];
    for (const change of [
      {},
      { leather, making: { state: 'cased' }, doubts: unknown },
      { leather: { ...leather, pocket: { min_mm: 1, max_mm: 2, bendRatio: 0.6 } }, making: { state: 'dyed' } },
      { book: { ...rounded, spine: { shape: 'rounded' } } },
      { book: { ...rounded, spine: { shape: 'rounded', rise_mm: 9 } }, doubts: { 'book.spine.rise_mm': { u: 2 } } },
      { book: { ...book, jointDip_mm: 4 }, doubts: dip },
    ]) {
      const job = soundJob(ledgerDocument(change));
      const doubt = coverDoubt(job);
      const cut = { width: 385, height: 266 };
      const z = normalQuantile(0.95);
      /** Size that a job needs beyond this cut. */
      const wanting = (doubts: object) => {
        const { closed, flat, height } = spareOf(coverDoubt(soundJob(ledgerDocument({ ...change, doubts }))), cut);
        return {
          width: Math.max(z * closed.u - closed.mean, z * flat.u - flat.mean),
          height: z * height.u - height.mean,
        };
      };
      const now = wanting(job.doubts);
      const right = measurements((path) => doubtOf(job, path).u, isRiseEstimated(job.book)).flatMap(
        ([path, u, said, input = path]) => {
          words.add(said);
          if (!doubt.inputs.some((each) => each.path === input) || u >= doubtOf(job, input).u) return [];
          const then = wanting({ ...job.doubts, [input]: { ...job.doubts[input], u } });
          const [width, height] = [now.width - then.width, now.height - then.height];
          const saves = Math.max(width, height);
          return saves < 0.05
            ? []
            : [
                {
                  path,
                  words: said,
                  // A sensitivity is the mean over u, so that another u changes it a little.
                  saves: expect.closeTo(saves, 2) as number,
                  of: width > height ? 'width' : 'height',
                },
              ];
        },
      );
      const found = measureNext(job, doubt, cut).map(({ doubt: _, ...rest }) => rest);
      for (const each of found) said.add(each.words);
      const listed = found.filter(({ path }) => path !== 'book.measured.closedWrap_mm');
      const byPath = <T extends { path: string }>(list: readonly T[]): T[] =>
        list.toSorted((a, b) => a.path.localeCompare(b.path));
      expect(byPath(listed), JSON.stringify(change)).toEqual(byPath(right));
    }
    // Each of them is worth while for one of these covers.
    expect([...said].sort()).toEqual([...words, 'a paper strip round the closed book'].sort());
  });

  test('never names what would save nothing', () => {
    const sure = soundJob(
      ledgerDocument({ doubts: { 'book.width_mm': { u: 0 }, 'leather.outside.bendRatio': { u: 0.03 } } }),
    );
    const paths = measureNext(sure, coverDoubt(sure), { width: 385, height: 266 }).map(({ path }) => path);
    expect(paths).not.toContain('book.width_mm');
    expect(paths).not.toContain('leather.outside.bendRatio');
    // A strip that was taken is not asked for again, though a second one would narrow the wrap.
    const rough = { 'book.width_mm': { u: 1 }, 'book.measured.closedWrap_mm': { u: 1.5 } };
    const taken = soundJob(
      patched(ledgerDocument({ doubts: rough }), [{ path: 'book.measured.closedWrap_mm' as never, value: 358 }]),
    );
    const after = measureNext(taken, coverDoubt(taken), { width: 385, height: 266 }).map(({ path }) => path);
    expect(after.length).toBeGreaterThan(0);
    expect(after.every((path) => path !== 'book.measured.closedWrap_mm' && path !== undefined)).toBe(true);
  });
});
