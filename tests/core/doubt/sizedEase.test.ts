import { describe, expect, test } from 'vitest';
import { endNeed, largestHeadTail, needsOverRange } from '../../../src/core/allowance/needs.ts';
import { coverDoubt } from '../../../src/core/doubt/coverDoubt.ts';
import { sizedEase } from '../../../src/core/doubt/sizedEase.ts';
import { CutChances, chanceOf, loosestOf, spareOf } from '../../../src/core/doubt/spare.ts';
import { changeOf } from '../../../src/core/leather/changeOf.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { ledgerDesign, ledgerDocument } from './jobWith.ts';

const easeOf = (change: object = {}) => ledgerDesign(change).pieces.ease;

/** Chance that every condition holds for a cut, head and tail alike. */
function chances({ job, doubt }: ReturnType<typeof ledgerDesign>) {
  return (width: number, height: number): number =>
    new CutChances(doubt, spareOf(doubt, { width, height }), loosestOf(job, 0)).fits();
}

/** Sizes of the cut step, so many to each side of a middle. */
const around = (middle: number, steps = 24): number[] =>
  Array.from({ length: 2 * steps + 1 }, (_, i) => middle + (i - steps) / 2);

describe('an ease left open', () => {
  test('gives the least size of the cut step that reaches the share', () => {
    // One dimension open: every size is tried.
    for (const change of [{}, { making: { state: 'cased', changeAlong: -0.01, changeAcross: -0.01 } }]) {
      const design = ledgerDesign({ ...change, ease: { head_mm: 1.5, tail_mm: 1.5 } });
      const { width, height } = design.pieces.outside;
      const chance = chances(design);
      expect(around(width).find((each) => chance(each, height) >= 0.95)).toBe(width);
      const high = ledgerDesign({ ...change, ease: { foreEdge_mm: 1.5 } });
      const of = chances(high);
      const found = around(high.pieces.outside.height).find((each) => of(high.pieces.outside.width, each) >= 0.95);
      expect(found).toBe(high.pieces.outside.height);
    }
  });

  test('in both dimensions reaches the share where some size does, and no smaller one in both would', () => {
    let reached = 0;
    const changes = [
      {},
      { work: { cutStep_mm: 1 } },
      { leather: { outside: { min_mm: 2, max_mm: 3 } } },
      { making: { state: 'cased' } },
      { loosest: { foreEdge_mm: 2.6, head_mm: 1.9, tail_mm: 1.9 } },
      { loosest: { foreEdge_mm: 2.4, head_mm: 1.6, tail_mm: 1.6 } },
      { ease: { share: 0.99 } },
      { ease: { share: 0.6 } },
    ];
    for (const change of changes) {
      const design = ledgerDesign(change);
      const { outside, ease } = design.pieces;
      const chance = chances(design);
      const { share } = design.job.ease;
      const step = design.job.work.cutStep_mm ?? 0.5;
      const sizes = around(outside.width, 10).flatMap((width) =>
        around(outside.height, 10).map((height) => chance(width, height)),
      );
      expect(ease.reaches, JSON.stringify(change)).toBe(Math.max(...sizes) >= share);
      if (!ease.reaches) continue;
      reached++;
      expect(chance(outside.width, outside.height)).toBeGreaterThanOrEqual(share);
      expect(chance(outside.width - step, outside.height - step), JSON.stringify(change)).toBeLessThan(share);
    }
    expect(reached).toBeGreaterThan(3);
    expect(reached).toBeLessThan(changes.length);
  });

  /** A cover cut exactly as sized: its spare room, and that which it would have without ease, of which the doubt is taken. */
  const exactly = (change: object) => {
    const design = ledgerDesign({ ...change, work: { cutStep_mm: 0 } });
    const { job, doubt, needs, pieces } = design;
    const { ease } = pieces;
    const { width: across, height: along } = changeOf(job);
    const { thick } = needs;
    const bare = {
      width: (Math.max(thick.closed.length, thick.flat.length) + 2 * endNeed(thick)) / (1 + across),
      height: (thick.book.height + 2 * (largestHeadTail(needs).needed + job.seam.edgeMargin_mm)) / (1 + along),
    };
    const cut = {
      width: bare.width + (2 * ease.foreEdge_mm) / (1 + across),
      height: bare.height + (ease.head_mm + ease.tail_mm) / (1 + along),
    };
    const lean = (ease.head_mm - ease.tail_mm) / 2;
    const spare = spareOf(doubt, cut);
    return {
      job,
      ease,
      spare,
      none: spareOf(doubt, bare),
      chances: new CutChances(doubt, spare, loosestOf(job, lean)),
    };
  };
  const shrunk = { state: 'cased', changeAcross: -0.05, changeAlong: -0.04 };

  test('without a cut step gives just the share, with the same number of standard deviations in both dimensions', () => {
    for (const change of [
      {},
      { making: shrunk },
      { making: { ...shrunk, changeAcross: 0.02, changeAlong: 0.03 } },
      { pockets: { construction: 'turned' } },
      { ease: { share: 0.55 } },
      { ease: { share: 0.995 }, loosest: { foreEdge_mm: 20, head_mm: 20, tail_mm: 20 } },
      // The book open needs more wrap than closed, and is the less sure of the two.
      { book: { ...ledgerDocument().book, jointDip_mm: 2 }, loosest: { foreEdge_mm: 20 } },
      // Head and tail hold the chance down, so that the fore-edge gets more.
      { leather: { outside: { min_mm: 1.7, max_mm: 1.8 } }, loosest: { head_mm: 2, tail_mm: 2 } },
    ]) {
      const { job, ease, spare, none, chances } = exactly(change);
      expect(ease.reaches, JSON.stringify(change)).toBe(true);
      expect(chances.fits()).toBeGreaterThanOrEqual(job.ease.share - 1e-9);
      expect(chances.fits(), JSON.stringify(change)).toBeLessThan(job.ease.share + 2e-4);
      const room = (['closed', 'flat', 'height'] as const).map((of) => spare[of].mean / none[of].u);
      const [closed = 0, flat = 0, height = 0] = room;
      // But neither past the middle of what may be.
      const { foreEdge_mm, head_mm: along } = job.loosest;
      const across = foreEdge_mm + Math.max(0, spare.closed.mean - spare.flat.mean) / 2;
      const isHigh = spare.height.mean > along - 1e-6;
      const isWide = spare.closed.mean > across - 1e-6;
      expect(isHigh && isWide).toBe(false);
      if (isHigh) expect(spare.height.mean).toBeCloseTo(along, 6);
      else if (isWide) expect(spare.closed.mean).toBeCloseTo(across, 6);
      else expect(height, JSON.stringify(change)).toBeCloseTo(Math.min(closed, flat), 6);
    }
  });

  test('beside a typed one gives the whole just the share, with room for how head and tail differ', () => {
    const loosest = { foreEdge_mm: 20, head_mm: 20, tail_mm: 20 };
    for (const ease of [
      { head_mm: 3, tail_mm: 1 },
      { head_mm: 1, tail_mm: 4 },
      { foreEdge_mm: 1.8 },
      { foreEdge_mm: 2.5, head_mm: 1 },
    ])
      for (const making of [{ state: 'dry' }, shrunk]) {
        const found = exactly({ ease, making, loosest });
        expect(found.ease, JSON.stringify(ease)).toMatchObject(ease);
        // Beside a typed head the tail is what it would be beside its like.
        const { head_mm: head, tail_mm: tail } = found.ease;
        const chance =
          'foreEdge_mm' in ease && 'head_mm' in ease
            ? exactly({ ease: { foreEdge_mm: 2.5, head_mm: tail, tail_mm: tail }, making, loosest }).chances.fits()
            : found.chances.fits();
        expect(chance, JSON.stringify([ease, making, head, tail])).toBeGreaterThanOrEqual(0.95 - 1e-9);
        expect(chance, JSON.stringify([ease, making, head, tail])).toBeLessThan(0.95 + 2e-4);
      }
    // Leaning by 2 mm, with 4.1 mm at most at each edge.
    const narrow = { foreEdge_mm: 20, head_mm: 4.1, tail_mm: 4.1 };
    const leaning = exactly({ ease: { head_mm: 3, tail_mm: 1 }, loosest: narrow }).ease.foreEdge_mm;
    const level = exactly({ ease: { head_mm: 2, tail_mm: 2 }, loosest: narrow }).ease.foreEdge_mm;
    expect(leaning).toBeGreaterThan(level + 0.1);
  });

  test('gives its own dimension the share where the typed one keeps the whole from it', () => {
    for (const making of [{ state: 'dry' }, shrunk]) {
      const wide = exactly({ ease: { head_mm: 0.3, tail_mm: 0.3 }, making });
      expect(wide.chances.fits('height')).toBeLessThan(0.95);
      expect(wide.chances.fits('width')).toBeGreaterThanOrEqual(0.95 - 1e-9);
      expect(wide.chances.fits('width')).toBeLessThan(0.95 + 2e-4);
      const high = exactly({ ease: { foreEdge_mm: 0.5 }, making });
      expect(high.chances.fits('width')).toBeLessThan(0.95);
      expect(high.chances.fits('height')).toBeGreaterThanOrEqual(0.95 - 1e-9);
      expect(high.chances.fits('height')).toBeLessThan(0.95 + 2e-4);
      expect([wide.ease.reaches, high.ease.reaches]).toEqual([false, false]);
    }
  });

  test('gives head and tail what their loosest gaps differ by, where only that reaches the share', () => {
    const loosest = { foreEdge_mm: 6, head_mm: 4.5, tail_mm: 1.5 };
    const uneven = ledgerDesign({ loosest });
    const { head_mm: head, tail_mm: tail, reaches } = uneven.pieces.ease;
    expect(head - tail).toBeCloseTo(3, 9);
    expect(reaches).toBe(true);
    expect(uneven.fitDoubt.chances.fits()).toBeGreaterThanOrEqual(0.95);
    const turned = easeOf({ loosest: { foreEdge_mm: 6, head_mm: 1.5, tail_mm: 4.5 } });
    expect([turned.head_mm, turned.tail_mm]).toEqual([expect.closeTo(tail, 9), expect.closeTo(head, 9)]);
    // The same room for both, or one of them typed, leaves them as they are.
    const wide = easeOf({ loosest: { foreEdge_mm: 6, head_mm: 6, tail_mm: 4 } });
    expect(wide.head_mm).toBe(wide.tail_mm);
    expect(easeOf({ loosest, ease: { head_mm: 1 } }).head_mm).toBe(1);
    expect(easeOf({ loosest, ease: { tail_mm: 1 } }).tail_mm).toBe(1);
  });

  test('reaches the share as it is cut where it says so, beside a typed head or tail and with turned ends, in any step', () => {
    const seen = new Set<string>();
    const law = (kind: string, change: object): ReturnType<typeof ledgerDesign> => {
      const design = ledgerDesign(change);
      const { reaches } = design.pieces.ease;
      expect(design.fitDoubt.chances.fits() >= 0.95, JSON.stringify(change)).toBe(reaches);
      seen.add(`${kind} ${reaches}`);
      return design;
    };
    for (const each of [0, 0.2, 0.4, 0.8, 1.5, 3])
      for (const loosest of [{}, { head_mm: 3, tail_mm: 2 }, { head_mm: 2, tail_mm: 3 }]) {
        law('head', { ease: { head_mm: each }, loosest });
        law('tail', { ease: { tail_mm: each }, loosest });
        const making = { state: 'dry', changeAlong: -0.05 };
        law('typed', { ease: { head_mm: each, tail_mm: each }, loosest, making, work: { cutStep_mm: 0.1 } });
      }
    for (const cutStep_mm of [0.7, 1, 2, 3, 4, 5])
      for (const making of [{ state: 'dry' }, { state: 'dry', changeAcross: -0.05 }]) {
        const { pieces, job, doubt } = law('turned', {
          pockets: { construction: 'turned' },
          making,
          work: { cutStep_mm },
          loosest: { foreEdge_mm: 4.2 },
        });
        if (!pieces.ease.reaches) continue;
        // Whole steps, of which one less is too small.
        const steps = pieces.outside.width / cutStep_mm;
        expect(steps).toBeCloseTo(Math.round(steps), 9);
        const ends = (2 * pieces.pocketDepth) / (1 + changeOf(job).width);
        const less = { width: pieces.outside.width - ends - cutStep_mm, height: pieces.outside.height - cutStep_mm };
        expect(new CutChances(doubt, spareOf(doubt, less), loosestOf(job, 0)).fits()).toBeLessThan(0.95);
      }
    expect([...seen].sort()).toEqual(
      ['head', 'tail', 'turned', 'typed'].flatMap((kind) => [`${kind} false`, `${kind} true`]),
    );
  });

  test('where no size reaches the share has the best chance of all', () => {
    const { book } = ledgerDocument();
    const loosest = { foreEdge_mm: 1, head_mm: 0.8, tail_mm: 0.6 };
    for (const change of [{}, { loosest }, { loosest, book: { ...book, jointDip_mm: 5 } }]) {
      const design = ledgerDesign({ ...change, making: { state: 'cased' } });
      const { outside, ease } = design.pieces;
      expect(ease.reaches).toBe(false);
      const chance = chances(design);
      const best = Math.max(
        ...around(outside.width, 10).flatMap((w) => around(outside.height, 10).map((h) => chance(w, h))),
      );
      expect(best).toBeLessThan(0.95);
      expect(chance(outside.width, outside.height), JSON.stringify(change)).toBeCloseTo(best, 9);
    }
  });

  test('follows the wished share, which is a field', () => {
    const of = (share: number) => easeOf({ ease: { share } });
    const [low, usual, high] = [of(0.6), of(0.95), of(0.97)];
    expect(low.foreEdge_mm).toBeLessThan(usual.foreEdge_mm);
    expect(usual.foreEdge_mm).toBeLessThanOrEqual(high.foreEdge_mm);
    expect(low.head_mm).toBeLessThan(usual.head_mm);
    expect(of(0.95)).toEqual(easeOf());
  });

  test('is alike at head and tail; beside a typed one it is what it would be beside its like', () => {
    const both = easeOf();
    expect(both.head_mm).toBe(both.tail_mm);
    expect(both.sized).toEqual(['foreEdge', 'head', 'tail']);
    const one = easeOf({ ease: { head_mm: 1 } });
    expect(one).toMatchObject({ head_mm: 1, tail_mm: expect.closeTo(both.tail_mm, 9), sized: ['foreEdge', 'tail'] });
  });

  test('beside a typed one is larger where the share is not reached otherwise', () => {
    // Rounded up with the tail of an even cut, a head of 3 mm is looser than 4 mm more often than 1 time in 20.
    const one = easeOf({ ease: { head_mm: 3 } });
    expect(one).toMatchObject({ head_mm: 3, reaches: true });
    expect(one.tail_mm).toBeGreaterThan(easeOf().tail_mm);
  });

  test('beside a typed one never takes of the gap that it asks for', () => {
    for (const typed of [0, 1, 2.5, 3.2, 3.5, 3.8, 4, 5]) {
      const { fits } = ledgerDesign({ ease: { head_mm: typed } });
      expect(fits.thick.head).toBeGreaterThanOrEqual(typed - 1e-9);
      expect(fits.thick.head).toBeLessThanOrEqual(typed + 0.25);
    }
  });

  test('that is typed stays as it is', () => {
    const typed = { foreEdge_mm: 0.7, head_mm: 1.1, tail_mm: -0.5 + 0.6 };
    expect(easeOf({ ease: typed })).toMatchObject({ ...typed, sized: [], reaches: true });
  });

  test('grows with the doubt of each input', () => {
    for (const [path, edge] of [
      ['book.width_mm', 'foreEdge_mm'],
      ['book.thickness_mm', 'foreEdge_mm'],
      ['leather.outside.bendRatio', 'foreEdge_mm'],
      ['leather.outside.neutral', 'foreEdge_mm'],
      ['pattern.outsideWidth_mm', 'foreEdge_mm'],
      ['book.height_mm', 'head_mm'],
      ['pattern.outsideHeight_mm', 'head_mm'],
    ] as const) {
      const sized = (by: number) => {
        const job = soundJob(
          ledgerDocument({ loosest: { foreEdge_mm: 20, head_mm: 20, tail_mm: 20 }, pattern: { rounding_mm: 0 } }),
        );
        const doubt = coverDoubt(job);
        const factor = doubt.inputs.map((each) => (each.path === path ? by : 1));
        const covariance = doubt.covariance.map((row, i) => row.map((c, k) => c * nth(factor, i) * nth(factor, k)));
        return sizedEase(job, needsOverRange(job), { ...doubt, covariance })[edge];
      };
      expect(sized(1.5), path).toBeGreaterThan(sized(1));
      expect(sized(1), path).toBeGreaterThan(sized(0.5));
    }
  });

  test('may be under 0 at the thick end where the range of the leather is the largest doubt', () => {
    const wide = {
      leather: { outside: { min_mm: 1, max_mm: 3 } },
      book: { ...ledgerDocument().book, measured: { error_mm: 0 } },
    };
    const sure = Object.fromEntries(
      [
        'leather.outside.neutral',
        'leather.outside.bendRatio',
        'making.changeAcross',
        'seam.edgeMargin_mm',
        'pattern.outsideWidth_mm',
      ].map((path) => [path, { u: 0 }]),
    );
    const loosest = { foreEdge_mm: 10, head_mm: 10, tail_mm: 10 };
    const even = ledgerDesign({ ...wide, loosest, doubts: sure, ease: { share: 0.8 } });
    expect(even.pieces.ease.foreEdge_mm).toBeLessThan(0);
    expect(chanceOf(spareOf(even.doubt, even.pieces.outside).closed)).toBeGreaterThanOrEqual(0.8);
  });
});
