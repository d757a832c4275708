import type { FoldedHole } from '../meshData.ts';
import type { SeamCourse, StrandCourse } from './seamCourse.ts';
import type { SeamKnot } from './seamKnot.ts';
import { movesAt } from './seamStrands.ts';
import type { StrandSection } from './seamWork.ts';
import { rowReach, rowStack } from './station.ts';
import { type SeamMesh, strandSweep } from './strandSweep.ts';

/** The free ends of a seam in work: what is left of thread or lace, and the needles on it. */
export interface FreeEnds {
  readonly strands: SeamMesh;
  readonly needles: SeamMesh;
}

/** Free length that is shown of a thread or lace, mm from the edge, and how far two ends part. The hand holds the rest. */
const FREE = 30;
const APART = 9;
/** A needle for leather, mm. Common practice, no source. */
const NEEDLE = 48;
const NEEDLE_THICKNESS = 1.2;

/**
 * The free end of each strand in work, out of the hole that it has just gone through, past the edge, with a needle.
 * @returns null where the seam is not begun or is done
 */
export function freeEnds(course: SeamCourse, seam: readonly FoldedHole[], share: number): FreeEnds | null {
  const done = movesAt(course, share);
  if (done === 0 || done === course.moves) return null;
  const inWork = course.strands.filter(({ knots }) => knots[0]!.move < done && knots.at(-1)!.move > done);
  if (inWork.length === 0) return null;
  const ends = inWork.map((strand, i): readonly [StrandCourse, StrandCourse] => {
    const at = strand.knots.findLastIndex(({ move }) => move <= done);
    const next = strand.knots.find(({ move, isInside }) => move > done && !isInside)!;
    return freeEnd(strand, strand.knots[at]!, next, inWork.length === 1 ? 0 : i === 0 ? 1 : -1);
  });
  const swept = (strands: readonly StrandCourse[], section: StrandSection): SeamMesh => {
    const part = { ...course, section, strands, moves: done };
    const { uvs, indices, lay } = strandSweep(part, 'fine');
    return { ...lay(seam), uvs, indices };
  };
  return {
    strands: swept(
      ends.map(([end]) => end),
      course.section,
    ),
    needles: swept(
      ends.map(([, needle]) => needle),
      { kind: 'needle', width: NEEDLE_THICKNESS, thickness: NEEDLE_THICKNESS },
    ),
  };
}

/** Out of the hole on the face where the strand goes on, over the edge, and on in the middle of the layers. */
function freeEnd(
  { row }: StrandCourse,
  last: SeamKnot,
  { turn }: SeamKnot,
  way: number,
): readonly [end: StrandCourse, needle: StrandCourse] {
  const isGrain = Math.cos(turn) > 0;
  const { u } = last;
  const [stack, reach] = [rowStack(row, u), rowReach(row, u)];
  const knot = (z: number, y: number, aside = 0): SeamKnot => ({
    ...last,
    u: u + (way * aside) / row.pitch,
    y: isGrain ? y : -stack - y,
    z,
    turn: isGrain ? 0 : Math.PI,
    twist: 0,
    isInside: false,
    pass: null,
  });
  const aside = (z: number): number => (APART * z) / FREE;
  const end = [0.4, reach, reach + 0.4 * FREE, reach + FREE].map((z, i) => knot(z, i < 2 ? 0.3 : -stack / 2, aside(z)));
  const needle = [0, NEEDLE].map((z) => knot(reach + FREE - 3 + z, -stack / 2, aside(reach + FREE - 3 + z)));
  return [
    { row, knots: [last, ...end] },
    { row, knots: needle },
  ];
}
