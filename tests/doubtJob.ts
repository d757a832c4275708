import fc from 'fast-check';
import { coverDoubt } from '../src/core/doubt/coverDoubt.ts';
import { doubtOf } from '../src/core/doubt/doubtOf.ts';
import { doubted } from '../src/core/doubt/spare.ts';
import { coverDesign } from '../src/core/fold/coverDesign.ts';
import { changeOf } from '../src/core/leather/changeOf.ts';
import { jobDocument, soundJob } from './jobArbitrary.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A share of the draws, near enough. */
const oneIn = (count: number) => fc.integer({ min: 1, max: count }).map((draw) => draw === 1);

const CALLIPERS = { u: 0.1, with: 'callipers B' };

/**
 * Jobs whose inputs are known in many ways: ease typed or left open, leather worked dry or wet, rise not measured, thickness and
 * board by callipers, one thickness for the leather, a strip round the book that shows what a strip would.
 */
export const doubtedDocument = fc
  .record({
    document: jobDocument,
    ease: fc.option(between(0, 4), { nil: null, freq: 1 }),
    state: fc.constantFrom('dry' as const, 'dry' as const, 'cased' as const, 'dyed' as const, 'wet-formed' as const),
    isRiseMeasured: fc.integer({ min: 0, max: 3 }).map((draw) => draw > 0),
    isCallipered: oneIn(4),
    isOneThickness: oneIn(4),
    isLoose: oneIn(3),
    // How far the strip is off what the other measures let expect, in standard uncertainties.
    strip: fc.option(between(-2, 2), { nil: null, freq: 3 }),
  })
  .map(({ document, ease, state, isRiseMeasured, isCallipered, isOneThickness, isLoose, strip }) => {
    const { outside } = document.leather;
    const spine = { ...document.book.spine, rise_mm: isRiseMeasured ? document.book.spine.rise_mm : null };
    const job = {
      ...document,
      book: { ...document.book, spine },
      leather: isOneThickness
        ? { ...document.leather, outside: { ...outside, max_mm: outside.min_mm } }
        : document.leather,
      making: { state },
      ease: { foreEdge_mm: ease, head_mm: ease, tail_mm: ease },
      loosest: isLoose ? { foreEdge_mm: 8, head_mm: 8, tail_mm: 8 } : {},
      doubts: isCallipered ? { 'book.thickness_mm': CALLIPERS, 'book.boardThickness_mm': CALLIPERS } : {},
    };
    return strip === null ? job : { ...job, book: { ...job.book, measured: { closedWrap_mm: stripOf(job, strip) } } };
  });

/** What a strip round the book would show if it is `off` standard uncertainties longer than computed, mm. */
function stripOf(document: object, off: number): number {
  const job = soundJob(document);
  const wrap = doubted(coverDoubt(job), { wrap: 1 });
  return wrap.mean + off * Math.hypot(wrap.u, doubtOf(job, 'book.measured.closedWrap_mm').u);
}

/** The document with a width at which the wrap has `deviations` standard uncertainties to spare at the middle of its leather. */
export function withWidthAt<T extends object>(document: T, deviations: number) {
  const job = soundJob(document);
  const design = coverDesign(job);
  const { closed } = design.fitDoubt.spare;
  const { width: across } = changeOf(job);
  const width = design.pieces.outside.width + (deviations * closed.u - closed.mean) / (1 + across);
  return { ...document, pattern: { outsideWidth_mm: width, outsideHeight_mm: null } };
}
