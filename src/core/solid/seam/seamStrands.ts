import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { FoldedHole } from '../meshData.ts';
import { laidStrands, type Strand } from './laidStrands.ts';
import { type SeamCourse, seamCourse } from './seamCourse.ts';

/**
 * Thread or lace of a cover as far as it is worked.
 * @param seam holes of the folded cover
 * @param share how far the seam is worked, 0 to 1, to the last whole move of the needle
 */
export function seamStrands(design: CoverDesign, point: RangePoint, seam: readonly FoldedHole[], share = 1): Strand[] {
  const course = seamCourse(design, point);
  return laidStrands(workedTo(course, share), seam);
}

/** The moves that are done at a share of the work. */
export const movesAt = ({ moves }: SeamCourse, share: number): number =>
  Math.round(moves * Math.max(0, Math.min(1, share)));

/** A course as far as it is worked; strands that are not begun are left out. */
function workedTo(course: SeamCourse, share: number): SeamCourse {
  const done = movesAt(course, share);
  if (done === course.moves) return course;
  const strands = course.strands
    .map(({ row, knots }) => ({ row, knots: knots.filter(({ move }) => move <= done) }))
    .filter(({ knots }) => knots.length > 1);
  return { ...course, strands };
}
