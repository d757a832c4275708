import fc from 'fast-check';
import type { Job } from '../src/core/job/jobSchema.ts';
import { parseJob } from '../src/core/job/parseJob.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const leatherDocument = fc
  .record({ min: between(0.6, 3.5), spread: between(0, 0.8), neutral: between(0.4, 0.8), bendRatio: between(0.05, 1) })
  .map(({ min, spread, neutral, bendRatio }) => ({ min_mm: min, max_mm: min + spread, neutral, bendRatio }));

/** Jobs across the useful range of books and leathers; every one of them is accepted by the schema. */
export const jobDocument = fc
  .record({
    kind: fc.constantFrom('hardback' as const, 'paperback' as const, 'limp' as const),
    width: between(70, 400),
    height: between(90, 500),
    thickness: between(8, 120),
    boardShare: between(0.02, 0.2),
    riseShare: fc.option(between(0.02, 0.45), { nil: 0 }),
    wedgeShare: fc.option(between(-0.15, 0.3), { nil: 0 }),
    edgeShare: fc.option(between(0, 0.3), { nil: 0 }),
    outside: leatherDocument,
    pocket: fc.option(leatherDocument, { nil: undefined }),
    lining: fc.option(leatherDocument, { nil: null }),
    method: fc.constantFrom('stitching' as const, 'lacing' as const),
    construction: fc.constantFrom('separate' as const, 'turned' as const),
    seating: fc.constantFrom('centred' as const, 'front' as const, 'back' as const, 'spine' as const),
  })
  .map((draw) => ({
    format: 'coverwright-job' as const,
    version: 3 as const,
    book: {
      kind: draw.kind,
      width_mm: draw.width,
      height_mm: draw.height,
      thickness_mm: draw.thickness,
      foreEdgeThickness_mm: draw.thickness * (1 + draw.wedgeShare),
      boardThickness_mm: Math.min(11, draw.thickness * draw.boardShare),
      spine: {
        shape: draw.riseShare > 0 ? ('rounded' as const) : ('flat' as const),
        rise_mm: draw.thickness * draw.riseShare,
      },
      cornerRadius_mm: draw.thickness * draw.edgeShare,
    },
    leather: { outside: draw.outside, pocket: draw.pocket, lining: draw.lining },
    seam: { method: draw.method },
    pockets: { construction: draw.construction },
    seating: draw.seating,
    ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
  }));

/** Parses a document that is known to be sound. */
export function soundJob(document: unknown): Job {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return parsed.job;
}
